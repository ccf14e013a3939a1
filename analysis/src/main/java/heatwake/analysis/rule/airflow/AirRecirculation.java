package heatwake.analysis.rule.airflow;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Air entering the coil well below outdoor air while running, but not at rest. */
public final class AirRecirculation implements Rule {
  /** Air drawn in this much colder than outdoors costs noticeable heat: 2 % a kelvin; ours. */
  static final double MATERIAL_K = 2.0;

  /** Without rest to compare with: sun on the outdoor probe can make up this much; ours. */
  private static final double MATERIAL_WITHOUT_REST_K = 5.0;

  /** Less than this is no ground for a mean, s. */
  static final double SHORTEST_S = 300;

  @Override
  public String id() {
    return "air-recirculation";
  }

  @Override
  public String summary() {
    return "The air entering the coil is well below the outdoor air while the heater runs, though"
        + " not at rest: it draws in its own cold air.";
  }

  @Override
  public String needs() {
    return "air-in and air-ambient; surer where they are also seen at rest";
  }

  @Override
  public String limits() {
    return "Raised when, from 10 min after the start, the inlet is more than 2 K (ours) further"
        + " below outdoor air than at rest; where no rest was seen, 5 K (ours) below outdoor air;"
        + " by more than 3 standard uncertainties. Two air probes shift against each other by 0.4 K"
        + " in a day (ours, k = 1). A rest of 1 to 5 min tells with 1 K instead (gusts, a cloud; ours),"
        + " if the first half-hour of running after it shows the same; a shorter one with 1.5 K (probes clipped on a moment ago; ours). Also raised when it came while"
        + " the heater ran: within half an hour, for half an hour and more in every 10 min of it,"
        + " further below outdoor air by the same 2 K and 3 times 1 K than in any 10 min of running"
        + " in the hour before; outdoor air moved by less than half of it meanwhile (sun on its probe"
        + " lifts that one, in a front it comes after; ours), and leaving air, suction pressure, heat"
        + " or COP followed (by half, a third, and half of what colder air costs: 2 % of heat a"
        + " kelvin, common practice), which a probe that slipped leaves unmoved. Also raised when it"
        + " grows while the heater runs: in some hour more than 5 K and 3 times 1 K further below"
        + " outdoor air than in the first half-hour of running, the inlet having fallen by at least"
        + " half of it and outdoor air by less than a quarter (a warm wall lets its probe fall late:"
        + " ours), with the same witnesses.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.AIR_IN) || !timeline.has(Channel.AIR_AMBIENT)) {
      return Outcome.notEnoughData("no air-in and air-ambient to compare");
    }
    SettledInstants runs = SettledInstants.of(evidence, SettledInstants::coolsAir);
    Optional<AirDeficit> running = AirDeficit.of(timeline, runs, SHORTEST_S);
    if (running.isEmpty()) {
      return Outcome.notEnoughData("the heater did not run for a quarter of an hour on end");
    }
    Outcome throughout =
        BesideRest.of(evidence, runs, running.get())
            .map(this::compared)
            .orElseGet(() -> alone(evidence, running.get()));
    return throughout instanceof Outcome.Flagged
        ? throughout
        : SuddenDeficit.of(evidence, runs, MATERIAL_K)
            .map(this::begun)
            .or(() -> GrowingDeficit.of(evidence, runs, MATERIAL_WITHOUT_REST_K).map(this::grown))
            .orElse(throughout);
  }

  private Outcome compared(BesideRest beside) {
    return beside.isFurther()
        ? Outcome.flagged(
            flag(
                beside.running(),
                said(beside.running())
                    + " while running, "
                    + besideOutdoors(beside.rest().belowK().value())
                    + " at rest"))
        : Outcome.clear();
  }

  private Outcome alone(Evidence evidence, AirDeficit running) {
    double pair = AirProbes.standardK(evidence, running.inletK());
    Estimate below =
        new Estimate(running.belowK().value(), Math.hypot(pair, running.belowK().standard()));
    if (!Doubt.above(below, MATERIAL_WITHOUT_REST_K)) {
      return Outcome.clear();
    }
    return Outcome.flagged(flag(running, said(running) + " while running; no rest to compare"));
  }

  private Outcome begun(SuddenDeficit sudden) {
    AirDeficit since = sudden.since();
    return Outcome.flagged(
        flag(
            since,
            said(since)
                + ", for "
                + Wording.duration((since.endMs() - since.startMs()) / 1e3)
                + " since "
                + Wording.moment(since.startMs())
                + "; in the running before that "
                + besideOutdoors(sudden.before())));
  }

  private Outcome grown(GrowingDeficit growing) {
    AirDeficit worst = growing.worst();
    return Outcome.flagged(
        flag(
            worst,
            said(worst)
                + " in the hour from "
                + Wording.moment(worst.startMs())
                + "; in the first half-hour of running "
                + besideOutdoors(growing.before())));
  }

  private static String besideOutdoors(double belowK) {
    return Wording.kelvin(Math.abs(belowK)) + (belowK < 0 ? " above" : " below") + " it";
  }

  private static String said(AirDeficit running) {
    return "The coil draws in air of "
        + Wording.celsius(running.inletK())
        + ", "
        + Wording.kelvin(running.belowK().value())
        + " below outdoor air";
  }

  private Flag flag(AirDeficit running, String evidence) {
    return new Flag(
        id(),
        Side.AIRFLOW,
        Severity.WARNING,
        running.startMs(),
        running.endMs(),
        evidence,
        List.of(
            "wall, fence or hedge that turns the outlet air back",
            "door shut, cover put on, or wind that turned",
            "heater standing in a shed or pit",
            "another heater blowing at this one",
            "outdoor probe in the sun or on a warm wall"),
        "Hold a strip of paper at the outlet and follow the air; give the heater the free space its"
            + " manual asks for.",
        Set.of(Channel.AIR_IN, Channel.AIR_AMBIENT));
  }
}
