/** What stands in a message: pure decoders from text or bytes to fields, numbers and times. */
package heatwake.collector.frame;
