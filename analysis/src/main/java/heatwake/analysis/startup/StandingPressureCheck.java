package heatwake.analysis.startup;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.refrigerant.Refrigerant;
import heatwake.analysis.refrigerant.Saturation;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/**
 * At rest the refrigerant stands at saturation for the temperature around it: between the colder
 * and the warmer of air and water. Much less means that no liquid is left, much more that there is
 * gas which does not condense.
 */
final class StandingPressureCheck implements Check {
  /** The unit may be this much colder than air and water (night sky, wind), K; ours. */
  private static final double COLDER_K = 5;

  /** Or warmer (sun, crankcase heater), K; ours. */
  private static final double WARMER_K = 8;

  /** Sides are level after this rest, s; common practice: a few minutes. */
  private static final double REST_S = 600;

  /** Over this time the mean is taken, s. */
  private static final double LOOK_S = 60;

  @Override
  public StartupCheck.Item item() {
    return StartupCheck.Item.STANDING_PRESSURE;
  }

  @Override
  public StartupCheck look(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.PRESSURE_DISCHARGE)) {
      return notMeasured("no pressure-discharge reading");
    }
    Optional<Refrigerant> refrigerant = evidence.recording().rig().heater().refrigerant();
    if (refrigerant.isEmpty()) {
      return notMeasured("no heater.refrigerant in the rig to compare the pressure with");
    }
    if (!timeline.has(Channel.AIR_IN) && !timeline.has(Channel.AIR_AMBIENT)) {
      return notMeasured("no air-in or air-ambient reading to compare the pressure with");
    }
    Optional<Stretch> rest = rest(evidence);
    if (rest.isEmpty()) {
      return notSeen("pressures with the compressor at rest for 10 min");
    }
    return judge(evidence, Saturation.of(refrigerant.get()), rest.get());
  }

  /** The last minute before a start that follows a long rest or the beginning of the run. */
  private static Optional<Stretch> rest(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = evidence.phaseGrid();
    int look = (int) Math.max(1, LOOK_S / timeline.stepS());
    for (Stretch resting : Stretch.where(phases.size(), i -> !phases.compressorRuns(i))) {
      Stretch last = new Stretch(Math.max(resting.from(), resting.to() - look), resting.to());
      boolean long_ = resting.durationS(timeline) >= REST_S;
      boolean read = !Double.isNaN(last.mean(timeline.of(Channel.PRESSURE_DISCHARGE)));
      if (read && (long_ || resting.from() == 0)) {
        return Optional.of(last);
      }
    }
    return Optional.empty();
  }

  private StartupCheck judge(Evidence evidence, Saturation saturation, Stretch rest) {
    Timeline timeline = evidence.timeline();
    AbsolutePressure atmosphere =
        Atmosphere.standard(evidence.recording().rig().site().altitudeM());
    double standingPa = rest.mean(timeline.of(Channel.PRESSURE_DISCHARGE));
    double airK = rest.mean(timeline.of(Channel.AIR_AMBIENT));
    if (Double.isNaN(airK)) {
      airK = rest.mean(timeline.of(Channel.AIR_IN));
    }
    if (Double.isNaN(airK)) {
      return notMeasured("no air-in or air-ambient reading while the compressor rested");
    }
    double waterK = rest.mean(timeline.of(Channel.WATER_IN));
    double warmerK = Double.isNaN(waterK) ? airK : Math.max(airK, waterK);
    double colderK = Double.isNaN(waterK) ? airK : Math.min(airK, waterK);
    double lowPa =
        saturation.dewPressure(within(saturation, colderK - COLDER_K)).pa() - atmosphere.pa();
    double highPa =
        saturation.bubblePressure(within(saturation, warmerK + WARMER_K)).pa() - atmosphere.pa();
    double atAirPa = saturation.bubblePressure(within(saturation, airK)).pa() - atmosphere.pa();
    String text =
        Wording.megapascals(standingPa)
            + " standing; saturation at "
            + Wording.celsius(airK)
            + " air is "
            + Wording.megapascals(atAirPa)
            + ", allowed "
            + Wording.megapascals(lowPa)
            + " to "
            + Wording.megapascals(highPa);
    long atMs = timeline.timeMs(rest.to() - 1);
    return standingPa >= lowPa && standingPa <= highPa ? pass(atMs, text) : fail(atMs, text);
  }

  /** A temperature kept within the refrigerant's lines: a wild reading is no failure. */
  private static double within(Saturation saturation, double tK) {
    return Math.max(Saturation.LOWEST_K, Math.min(saturation.highestK(), tK));
  }
}
