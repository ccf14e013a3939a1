/** Heat given to the water and electric energy taken for it. */
package heatwake.analysis.heat;
