/** Values with standard uncertainties, combined as the GUM (JCGM 100:2008) says. */
package heatwake.analysis.uncertainty;
