/** The broker inside: Wi-Fi probes publish to it and nothing else needs to be installed. */
package heatwake.collector.broker;
