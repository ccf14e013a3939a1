/** Meters on a Modbus RTU bus, read by functions 3 and 4 only: nothing is ever written. */
package heatwake.collector.modbus;
