/**
 * Probes that publish over MQTT. A message is acknowledged to the broker only when its readings are
 * on disk.
 */
package heatwake.collector.mqtt;
