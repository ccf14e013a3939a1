/** Polynomials that stand in for slower functions where a run evaluates them at every reading. */
package heatwake.analysis.approximation;
