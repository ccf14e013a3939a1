/** What a person who sets the bypass needs to know. */
package heatwake.analysis.bypass;
