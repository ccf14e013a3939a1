package heatwake.analysis.site;

/**
 * Standard uncertainty of one reading: an absolute part in SI, a part relative to the reading, or
 * unstated (then the analysis takes the default of the channel's quantity and says so).
 */
public sealed interface ReadingUncertainty {
  /** The same at every reading; a temperature's is a difference in kelvin. */
  record Absolute(double si) implements ReadingUncertainty {}

  /** A share of the reading, 0.02 for 2 %. */
  record Relative(double share) implements ReadingUncertainty {}

  /** The rig says nothing. */
  record Unstated() implements ReadingUncertainty {}
}
