/** What is known of a site before anything is measured: pool, heater nameplate, tariff, probes. */
package heatwake.analysis.site;
