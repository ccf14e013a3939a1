package heatwake.analysis.refrigerant;

/** Saturation pressure as a function of temperature along the bubble or the dew line. */
@FunctionalInterface
interface SaturationLine {
  double pressurePa(double tK);
}
