package heatwake.analysis.rule.airflow;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;

/**
 * Whether the heater itself feels that its air became colder. A probe that falls off the grille
 * onto the cold coil reads as low, but nothing else follows it.
 */
final class ColderAirWitness {
  /** Air leaves a coil colder by most of what it enters colder; half of it is asked for; ours. */
  private static final double LEAVING_SHARE = 0.5;

  /**
   * Heat goes with the entering air by about 2 % a kelvin (common practice); half of it is asked
   * for, of heat or of COP: a compressor of variable speed may hold its heat with more power.
   */
  private static final double HEAT_SHARE_PER_K = 0.01;

  /**
   * A coil that passes 2 % less a kelvin evaporates lower by most of each kelvin, and pressure at
   * saturation goes by about 3 % a kelvin around 5 Cel (tables of R-32, R-410A, R-134a, R-290: 2.9
   * to 3.5 %, from memory); a third of it is asked for.
   */
  private static final double SUCTION_SHARE_PER_K = 0.01;

  private final Evidence evidence;
  private final SettledInstants settled;

  ColderAirWitness(Evidence evidence, SettledInstants settled) {
    this.evidence = evidence;
    this.settled = settled;
  }

  /** Whether leaving air, suction pressure, heat or COP went down with the entering air. */
  boolean agrees(AirDeficit before, AirDeficit after) {
    Timeline timeline = evidence.timeline();
    double fallK = before.inletK() - after.inletK();
    double[] heat =
        evidence.trace(Trace.Kind.HEAT).orElseGet(() -> Timeline.unknown(timeline.size()));
    double[] power = timeline.of(Channel.POWER);
    double[] leaving = timeline.of(Channel.AIR_OUT);
    double[] suction = timeline.of(Channel.PRESSURE_SUCTION);
    double atmospherePa = Atmosphere.standard(evidence.recording().rig().site().altitudeM()).pa();
    double heatWas = mean(heat, before);
    double heatIs = mean(heat, after);
    double copWas = heatWas / mean(power, before);
    double copIs = heatIs / mean(power, after);
    // What is not clipped is NaN, and agrees with nothing.
    return mean(leaving, before) - mean(leaving, after) > LEAVING_SHARE * fallK
        || lost(mean(suction, before) + atmospherePa, mean(suction, after) + atmospherePa)
            > SUCTION_SHARE_PER_K * fallK
        || (heatWas > 0
            && Math.max(lost(heatWas, heatIs), orNone(lost(copWas, copIs)))
                > HEAT_SHARE_PER_K * fallK);
  }

  private double mean(double[] values, AirDeficit stretch) {
    return settled.mean(values, stretch.startMs(), stretch.endMs());
  }

  private static double lost(double was, double is) {
    return 1 - is / was;
  }

  private static double orNone(double share) {
    return Double.isNaN(share) ? 0 : share;
  }
}
