package heatwake.dashboard.demo.plant.water;

/**
 * Pump, strainer, filter, heater branch with its bypass, and return line, by the head each takes at
 * the design flow.
 *
 * @param totalM3PerS design flow through pump and filter
 * @param heaterShare design part of it through the heater, as the bypass valve was set
 * @param headPa head of the pump at the design flow
 * @param shutOffRatio head of the pump against a closed valve over that at the design flow
 * @param suctionPa loss from pool to pump at the design flow, strainer included
 * @param filterPa loss of the clean filter at the design flow
 * @param heaterPa loss of the heater branch at the design flow
 * @param pipeM3 water in the heater and its branch
 */
public record Circuit(
    double totalM3PerS,
    double heaterShare,
    double headPa,
    double shutOffRatio,
    double suctionPa,
    double filterPa,
    double heaterPa,
    double pipeM3) {

  /** A usual circuit for a design flow and a share through the heater. */
  public static Circuit of(double totalM3PerS, double heaterShare) {
    return new Circuit(
        totalM3PerS, heaterShare, 95e3, 1.45, 12e3, 35e3, 14e3, 0.004 + 2 * totalM3PerS);
  }

  /** Head the pump gives at a flow, Pa: a falling parabola. */
  public double pumpHeadPa(double flowM3PerS) {
    double share = flowM3PerS / totalM3PerS;
    return headPa * (shutOffRatio - (shutOffRatio - 1) * share * share);
  }
}
