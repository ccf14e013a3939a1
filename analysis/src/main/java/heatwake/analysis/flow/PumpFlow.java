package heatwake.analysis.flow;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.PumpPoint;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.List;
import java.util.Optional;

/**
 * Total flow from the filter pressure and the pump curve. The pressure at the filter inlet is the
 * pump's head less what its suction side takes, which is not measured.
 *
 * @param flowM3PerS on the grid of the timeline, zero where the pump is off
 * @param uncertainty systematic standard uncertainty
 */
@SuppressWarnings("ArrayRecordComponent") // a large array, shared on purpose
record PumpFlow(double[] flowM3PerS, ProbeUncertainty uncertainty) {
  /** Suction lift and losses that are not measured; ours, half of a usual 10 to 30 kPa. */
  private static final double SUCTION_PA = 10e3;

  /** Spread of pumps about their printed curve; ours, after common acceptance grades. */
  private static final double CURVE_SHARE = 0.06;

  /** A filter inlet under this pressure has no pump behind it; ours. */
  private static final double PUMP_OFF_PA = 15e3;

  /** The flow, if there is a filter pressure and a curve of falling head. */
  static Optional<PumpFlow> of(Timeline timeline, Rig rig) {
    List<PumpPoint> curve = rig.pumpCurve();
    if (!timeline.has(Channel.PRESSURE_FILTER) || !falls(curve)) {
      return Optional.empty();
    }
    double[] pressure = timeline.of(Channel.PRESSURE_FILTER);
    double[] flow = new double[pressure.length];
    ProbeUncertainty gauge = ProbeUncertainty.of(rig, Channel.PRESSURE_FILTER);
    double squares = 0;
    int n = 0;
    for (int i = 0; i < flow.length; i++) {
      if (pressure[i] < PUMP_OFF_PA) {
        continue;
      }
      double headPa = pressure[i] + SUCTION_PA;
      flow[i] = flow(curve, headPa);
      if (!Double.isNaN(headPa)) {
        double u = Math.hypot(gauge.at(pressure[i]), SUCTION_PA) * slope(curve, headPa);
        squares += u * u;
        n++;
      }
    }
    double absolute = n == 0 ? 0 : Math.sqrt(squares / n);
    return Optional.of(
        new PumpFlow(flow, new ProbeUncertainty(absolute, CURVE_SHARE, gauge.stated())));
  }

  private static boolean falls(List<PumpPoint> curve) {
    for (int k = 1; k < curve.size(); k++) {
      if (curve.get(k).headPa() >= curve.get(k - 1).headPa()
          || curve.get(k).flowM3PerS() <= curve.get(k - 1).flowM3PerS()) {
        return false;
      }
    }
    return curve.size() >= 2;
  }

  /** Flow at a head, straight between points and beyond the last ones, never negative. */
  private static double flow(List<PumpPoint> curve, double headPa) {
    int k = piece(curve, headPa);
    PumpPoint low = curve.get(k);
    return Math.max(0, low.flowM3PerS() + (low.headPa() - headPa) * slopeOf(curve, k));
  }

  private static double slope(List<PumpPoint> curve, double headPa) {
    return slopeOf(curve, piece(curve, headPa));
  }

  private static int piece(List<PumpPoint> curve, double headPa) {
    int k = 0;
    while (k < curve.size() - 2 && headPa < curve.get(k + 1).headPa()) {
      k++;
    }
    return k;
  }

  private static double slopeOf(List<PumpPoint> curve, int k) {
    PumpPoint low = curve.get(k);
    PumpPoint high = curve.get(k + 1);
    return (high.flowM3PerS() - low.flowM3PerS()) / (low.headPa() - high.headPa());
  }
}
