/** From a recording to findings: pure computation, without I/O, clock or threads. */
package heatwake.analysis;
