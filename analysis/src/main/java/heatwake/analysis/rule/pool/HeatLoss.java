package heatwake.analysis.rule.pool;

import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.pool.MostLoss;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.heat.LowHeat;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;

/** The pool loses most of what the heater gives. */
public final class HeatLoss implements Rule {
  /** Most of the heat: more than half. */
  private static final double MOST = 0.5;

  /** A loss below this part of the rated heat is small for the heater; ours. */
  private static final double PART_OF_RATED = 0.35;

  /** A pool at its set temperature takes only what it loses; below this it is still asking, K. */
  private static final double ASKING_K = 0.5;

  /** The heater must have run for this part of the run, or it was not asked for heat; ours. */
  private static final double LEAST_DUTY = 0.6;

  /**
   * Heat known for less of its time is not held against what the pool stored in all of it; ours.
   */
  private static final double LEAST_KNOWN = 0.9;

  /** Less heating than this tells nothing of a pool, s; ours. */
  private static final double SHORTEST_S = 3 * 3600;

  @Override
  public String id() {
    return "heat-loss";
  }

  @Override
  public String summary() {
    return "The pool, still below its set temperature, loses most of what the heater gives.";
  }

  @Override
  public String needs() {
    return "the delivered heat, water-pool (or water-in), pool.volume, and pool.setpoint; at least"
        + " 3 h of heating";
  }

  @Override
  public String limits() {
    return "Raised when delivered less stored heat is more than half of the delivered heat by more"
        + " than 3 standard uncertainties, and more than 35 % of the rated heat, while the pool stays 0.5 K below its set temperature"
        + " and the heater ran for 60 % of the run (ours). Not raised where the heat is low (see"
        + " low-heat) and the pool loses less than half of what the nameplate promises: then the"
        + " heater is weak, not the pool. A loss that exceeds, by more than 3 standard"
        + " uncertainties, what air, wind and sky can take from an open pool is given to the"
        + " measurement: evaporation (ASHRAE), convection and radiation to a clear sky, in the"
        + " weather measured with the highest activity factor, 1.5; else in the air measured, at 20"
        + " % humidity and 3 m/s (ours), about 1500 W/m2 at 15 °C. Silent where the heat is known for"
        + " less than 90 % of its time (ours), and where the flow is assumed and no rating bounds it; what is unknown of the rest widens its uncertainty.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Optional<Estimate> delivered = evidence.heat().deliveredJ();
    Optional<Estimate> stored = evidence.pool().storedJ();
    if (delivered.isEmpty() || stored.isEmpty()) {
      return Outcome.notEnoughData(
          evidence.recording().rig().pool().volumeM3().isEmpty()
              ? "no pool.volume in the rig"
              : "delivered heat or pool temperature not known");
    }
    if (evidence.heat().flowIsAssumed()
        && evidence.recording().rig().heater().ratings().isEmpty()) {
      return Outcome.notEnoughData(
          "the flow through the heater is not measured, and no [[heater.rating]] in the rig bounds"
              + " the heat");
    }
    HeatingTime heating = HeatingTime.of(evidence);
    if (heating.onS() < SHORTEST_S || HeatingTime.isIdle(evidence)) {
      return Outcome.notEnoughData("the heater ran for less than three hours");
    }
    if (heating.share() < LEAST_DUTY || !isAsking(evidence) || delivered.get().value() <= 0) {
      return Outcome.clear();
    }
    double known = evidence.heat().deliveredKnown();
    if (known < LEAST_KNOWN) {
      return Outcome.notEnoughData(
          "the heat is known for "
              + Wording.percent(known)
              + " of its time only, what the pool stored for all of it");
    }
    Estimate given = withUnknown(delivered.get(), known);
    Estimate loss =
        new Estimate(
            given.value() - stored.get().value(),
            Math.hypot(given.standard(), stored.get().standard()));
    LossFlags told = new LossFlags(id(), evidence, delivered.get(), loss);
    Estimate kept = stored.get().dividedBy(given);
    Estimate share = new Estimate(1 - kept.value(), kept.standard());
    return Doubt.above(share, MOST)
            && isMuchForTheHeater(evidence, loss)
            && !isLittleForASoundHeater(evidence, loss, heating)
        ? Outcome.flagged(
            beyondAnyPool(evidence, loss)
                .map(most -> told.beyond(most, share))
                .orElseGet(() -> told.flag(share)))
        : Outcome.clear();
  }

  /**
   * Delivered heat with what the time adds in which it is not known. As much as in the rest of the
   * time is one standard uncertainty, so the expanded one spans from nothing lost to twice that.
   */
  private static Estimate withUnknown(Estimate delivered, double known) {
    double unknownJ = delivered.value() * (1 / known - 1);
    return new Estimate(delivered.value(), Math.hypot(delivered.standard(), unknownJ));
  }

  /** What an open pool can lose at the most, if the loss is more than that beyond doubt. */
  private static Optional<MostLoss> beyondAnyPool(Evidence evidence, Estimate loss) {
    double runS = (evidence.recording().endMs() - evidence.recording().startMs()) / 1e3;
    return evidence
        .pool()
        .poolK()
        .flatMap(pool -> MostLoss.of(evidence.timeline(), evidence.recording().rig(), pool))
        .filter(
            most ->
                Doubt.above(
                    new Estimate(
                        loss.value() / runS - most.totalW().value(),
                        Math.hypot(loss.standard() / runS, most.totalW().standard())),
                    0));
  }

  /** A loss that the heater would outrun in warmer air is the season's, not the pool's. */
  private static boolean isMuchForTheHeater(Evidence evidence, Estimate loss) {
    OptionalDouble rated = evidence.recording().rig().heater().greatestRatedHeatW();
    double runS = (evidence.recording().endMs() - evidence.recording().startMs()) / 1e3;
    return rated.isEmpty() || loss.value() / runS > PART_OF_RATED * rated.getAsDouble();
  }

  /** The heat is low, and with the heat promised the loss would be the smaller part of it. */
  private static boolean isLittleForASoundHeater(
      Evidence evidence, Estimate loss, HeatingTime heating) {
    double promisedJ = 0;
    double steadyS = 0;
    for (SteadySpan span : evidence.steady()) {
      if (span.expectedHeatW().isPresent()) {
        double lengthS = (span.endMs() - span.startMs()) / 1e3;
        promisedJ += span.expectedHeatW().get().value() * lengthS;
        steadyS += lengthS;
      }
    }
    return steadyS > 0
        && loss.value() < MOST * promisedJ / steadyS * heating.onS()
        && new LowHeat().evaluate(evidence) instanceof Outcome.Flagged;
  }

  private static boolean isAsking(Evidence evidence) {
    OptionalDouble setpoint = evidence.recording().rig().pool().setpointK();
    Optional<Estimate> pool = evidence.pool().poolK();
    return setpoint.isEmpty()
        || pool.filter(
                known -> known.value() < setpoint.getAsDouble() - ASKING_K - known.standard())
            .isPresent();
  }
}
