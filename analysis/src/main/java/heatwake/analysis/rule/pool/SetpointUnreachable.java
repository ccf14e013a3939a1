package heatwake.analysis.rule.pool;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.water.PoolWater;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** At the pace seen, the set temperature is not reached. */
public final class SetpointUnreachable implements Rule {
  private static final double DAY_S = 86_400;

  /** A heater that fits its pool warms it by 2 to 6 K a day; below this it does not get there. */
  private static final double LEAST_PACE_K_PER_S = 1.0 / DAY_S;

  /** A pool that gets there in this time gets there; ours. */
  private static final double PATIENCE_S = 4 * DAY_S;

  /** Closer to the set temperature than this, weather decides, K; ours. */
  private static final double GAP_K = 1;

  /** Less of a run than this tells nothing of a day, s; ours. */
  private static final double SHORTEST_S = 6 * 3600;

  /** With less heating than this there is no pace to speak of, s; ours. */
  private static final double LEAST_HEATING_S = 3600;

  /** Water at rest for more than this part of the run limits the heat; ours. */
  private static final double RESTS_MUCH = 0.25;

  @Override
  public String id() {
    return "setpoint-unreachable";
  }

  @Override
  public String summary() {
    return "At the pace seen, the set temperature is not reached in the coming days.";
  }

  @Override
  public String needs() {
    return "water-pool (or water-in), pool.setpoint and six hours of run; pool.volume, to count the"
        + " hours at rest";
  }

  @Override
  public String limits() {
    return "Raised when the pool is more than 1 K below its set temperature and warms, heating"
        + " hours and rest taken together, by less than 1 K a day (2 to 6 K are usual: common"
        + " practice) and so slowly that it takes more than 4 days (ours), both with two standard"
        + " uncertainties of the pace in its favour. Schedule if water rests for a quarter of the"
        + " run and the pace while heating would do, else pool.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    OptionalDouble setpoint = evidence.recording().rig().pool().setpointK();
    if (setpoint.isEmpty()) {
      return Outcome.notEnoughData("no pool.setpoint in the rig");
    }
    HeatingTime time = HeatingTime.of(evidence);
    Optional<Estimate> pool = evidence.pool().poolK();
    Optional<Estimate> pace = pace(evidence, time);
    if (pool.isEmpty() || pace.isEmpty()) {
      return Outcome.notEnoughData(
          "the pool's temperature was not seen over an hour of heating, or no pool.volume");
    }
    if (time.onS() + time.offS() < SHORTEST_S) {
      return Outcome.notEnoughData("the run is shorter than six hours");
    }
    if (time.onS() < LEAST_HEATING_S || HeatingTime.isIdle(evidence)) {
      return Outcome.notEnoughData("the heater ran for less than an hour");
    }
    double gapK = setpoint.getAsDouble() - pool.get().value();
    if (gapK - pool.get().expanded() <= GAP_K) {
      return Outcome.clear();
    }
    return isTooSlow(pace.get(), gapK)
        ? Outcome.flagged(flag(evidence, gapK, pace.get(), time))
        : Outcome.clear();
  }

  /** Pace over heating and resting hours together, K/s. */
  private static Optional<Estimate> pace(Evidence evidence, HeatingTime time) {
    OptionalDouble volume = evidence.recording().rig().pool().volumeM3();
    double runS = (evidence.recording().endMs() - evidence.recording().startMs()) / 1e3;
    if (volume.isPresent() && evidence.pool().storedJ().isPresent() && runS > 0) {
      return evidence
          .pool()
          .storedJ()
          .map(
              stored ->
                  stored.times(
                      1
                          / (PoolWater.USUAL_HEAT_COEFFICIENT_J_PER_M3_K
                              * volume.getAsDouble()
                              * runS)));
    }
    return evidence.pool().warmingKPerS().map(warming -> warming.times(time.share()));
  }

  private static boolean isTooSlow(Estimate pace, double gapK) {
    double atBest = pace.value() + pace.expanded();
    return atBest < LEAST_PACE_K_PER_S && atBest * PATIENCE_S < gapK;
  }

  private Flag flag(Evidence evidence, double gapK, Estimate pace, HeatingTime time) {
    boolean schedule =
        time.dryShare() > RESTS_MUCH
            && time.share() > 0
            && !isTooSlow(pace.times(1 / time.share()), gapK);
    double days = gapK / pace.value() / DAY_S;
    String when =
        pace.value() <= 0
            ? "it does not get there at all"
            : String.format(Locale.ROOT, "at that pace it takes %.0f days", Math.ceil(days));
    return new Flag(
        id(),
        schedule ? Side.SCHEDULE : Side.POOL,
        Severity.WARNING,
        evidence.recording().startMs(),
        evidence.recording().endMs(),
        "The pool is "
            + Wording.kelvin(gapK)
            + " below its set temperature and "
            + (pace.value() < 0 ? "cools by " : "warms by ")
            + String.format(Locale.ROOT, "%.1f", Math.abs(pace.value()) * DAY_S)
            + " K a day; "
            + when
            + (schedule
                ? ". Water stood still for " + Wording.percent(time.dryShare()) + " of the run"
                : ""),
        schedule
            ? List.of("pump timer too short", "heater not allowed to call the pump")
            : List.of(
                "pool too large or too exposed for this heater",
                "pool left uncovered",
                "set temperature too high for the season"),
        schedule
            ? "Let the pump run while the heater calls for heat, then look at the pace again."
            : "Cover the pool and look at the pace again; compare the heater's rated heat with the"
                + " pool's volume and loss.",
        Set.of(Channel.WATER_POOL, Channel.WATER_IN));
  }
}
