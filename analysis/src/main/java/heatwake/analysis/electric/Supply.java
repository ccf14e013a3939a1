package heatwake.analysis.electric;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.statistics.descriptive.Median;

/**
 * The supply that a current comes from. One phase or three is a matter of the installation, told by
 * the nominal voltage or by the level of a whole run, never by a single reading: a three-phase
 * supply may sag at any moment.
 *
 * @param volts at every instant, NaN where not known
 * @param levelV of the run
 * @param phaseFactor apparent power of the heater over current times voltage: 1 on one phase; on
 *     three, root of three between two of them, 3 between one and neutral
 * @param share relative standard uncertainty of the voltage
 */
@SuppressWarnings("ArrayRecordComponent") // a large array, shared on purpose
record Supply(double[] volts, double levelV, double phaseFactor, double share) {
  /**
   * No single-phase supply gives as much, and no three-phase one less between its phases: between
   * 277 V + 10 % and 380 V - 10 % (nominal voltages and their range: IEC 60038).
   */
  private static final double THREE_PHASE_V = 320;

  /** One phase of three against neutral lies at 0.58 of the nominal voltage between two of them. */
  private static final double PHASE_TO_NEUTRAL = 0.7;

  /** Supply as installed, within 10 % of nominal (IEC 60038), rectangular. */
  private static final double NOMINAL_SHARE = 0.1 / Math.sqrt(3);

  /** Less is a supply switched off: heaters for 50 V do not exist (common practice). */
  private static final double LEAST_V = 50;

  /** The supply as measured, else as stated. */
  static Optional<Supply> of(Rig rig, Timeline timeline) {
    double nominal = rig.heater().voltageV().orElse(Double.NaN);
    double[] volts = timeline.of(Channel.VOLTAGE);
    double[] on = Arrays.stream(volts).filter(volt -> volt >= LEAST_V).toArray();
    if (on.length > 0) {
      double level = Median.withDefaults().evaluate(on);
      double share = ProbeUncertainty.of(rig, Channel.VOLTAGE).at(level) / level;
      return Optional.of(new Supply(volts, level, phaseFactor(nominal, level), share));
    }
    if (timeline.has(Channel.VOLTAGE) || Double.isNaN(nominal)) {
      return Optional.empty();
    }
    double[] stated = new double[timeline.size()];
    Arrays.fill(stated, nominal);
    return Optional.of(new Supply(stated, nominal, phaseFactor(nominal, nominal), NOMINAL_SHARE));
  }

  private static double phaseFactor(double nominalV, double levelV) {
    if (levelV >= THREE_PHASE_V) {
      return Math.sqrt(3);
    }
    if (nominalV >= THREE_PHASE_V) {
      return levelV < PHASE_TO_NEUTRAL * nominalV ? 3 : Math.sqrt(3);
    }
    return 1;
  }
}
