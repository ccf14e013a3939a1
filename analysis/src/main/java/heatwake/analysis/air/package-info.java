/** Moist air and the standard atmosphere, by the ASHRAE Handbook. */
package heatwake.analysis.air;
