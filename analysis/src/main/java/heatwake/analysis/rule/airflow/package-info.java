/** Rules about the air side: coil, fan, ice, recirculation. */
package heatwake.analysis.rule.airflow;
