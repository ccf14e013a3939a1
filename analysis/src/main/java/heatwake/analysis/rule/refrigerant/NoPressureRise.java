package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** The compressor draws power, but the high-side pressure hardly rises. */
public final class NoPressureRise implements Rule {
  private static final List<String> CAUSES =
      List.of(
          "worn or broken compressor (valves, scroll)",
          "reversing valve stuck half way",
          "three-phase compressor running backwards",
          "hardly any refrigerant",
          "pressure probe not open to the circuit");

  @Override
  public String id() {
    return "no-pressure-rise";
  }

  @Override
  public String summary() {
    return "The compressor draws power, but the high-side pressure hardly rises.";
  }

  @Override
  public String needs() {
    return "pressure-discharge, and a compressor start seen in power, current or pressure;"
        + " sharper with pressure-suction, water-in, water-out, heater.refrigerant and"
        + " [[heater.rating]]";
  }

  @Override
  public String limits() {
    return "Raised when, 2.5 to 5 min after a start, the high side (absolute) stands less than 10 %"
        + " above its pressure before the start (common practice), the two sides lie less than 25 %"
        + " of the low side apart (ours), and the water rises less than 1.0 K or takes up less"
        + " than 50 % of the expected heat (ours), or less than 25 % above it where the water takes up beyond"
        + " doubt less than 25 % of the expected heat (ours). Where the water is warmer than the coil the high"
        + " side may stand less than 10 % above saturation at water-in instead (the water alone puts it"
        + " there), if the low side is pulled down by less than 10 % and the water takes up less than the"
        + " compressor draws and beyond doubt less than half of the expected heat. Looked at after a"
        + " rest of at least 3 min. A draw that came on within 1 min of the water and moved neither side by"
        + " more than 2 % may be the pool pump's, and the side is open then (ours).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.PRESSURE_DISCHARGE)) {
      return Outcome.notEnoughData("no pressure-discharge reading");
    }
    List<StartPressures> starts = PressedStarts.in(evidence);
    if (starts.isEmpty()) {
      return Outcome.notEnoughData(
          "no compressor start with five minutes of running and pressure readings around it");
    }
    List<Flag> flags = new ArrayList<>();
    List<StartPressures> failed = new ArrayList<>();
    for (StartPressures start : starts) {
      if (start.failed()) {
        failed.add(start);
      } else if (!failed.isEmpty()) {
        flags.add(flag(failed, evidence));
        failed.clear();
      }
    }
    if (!failed.isEmpty()) {
      flags.add(flag(failed, evidence));
    }
    return Outcome.of(flags);
  }

  private Flag flag(List<StartPressures> failed, Evidence evidence) {
    StartPressures first = failed.get(0);
    StartPressures last = failed.get(failed.size() - 1);
    boolean mayBePump = failed.stream().allMatch(start -> PumpsDraw.mayBe(evidence, start));
    return new Flag(
        id(),
        mayBePump ? Side.UNDECIDED : Side.REFRIGERANT,
        mayBePump ? Severity.WARNING : Severity.ALARM,
        first.cycle().startMs(),
        last.untilMs(),
        words(failed)
            + (mayBePump
                ? "; the draw came with the water and moved neither pressure, so it may be the pool"
                    + " pump's, and the compressor not have started"
                : ""),
        mayBePump
            ? Stream.concat(
                    Stream.of(
                        "the pool pump on the heater's meter, and a compressor that never ran"),
                    CAUSES.stream())
                .toList()
            : CAUSES,
        mayBePump
            ? "Switch the heater off with the pool pump running and read the power: what stands"
                + " then is another load's."
            : "Put a second gauge on the high side during a start; if it agrees, stop the heater and"
                + " have a certified refrigerant handler test compressor and reversing valve.",
        Set.of(Channel.PRESSURE_DISCHARGE));
  }

  private static String words(List<StartPressures> failed) {
    StartPressures first = failed.get(0);
    StringBuilder text = new StringBuilder(120);
    text.append("High side ")
        .append(Wording.megapascals(first.beforePa()))
        .append(" before the start, ")
        .append(Wording.megapascals(first.afterPa()))
        .append(" after 5 min of running");
    first.suctionPa().ifPresent(low -> text.append(", low side ").append(Wording.megapascals(low)));
    if (first.isWatersOwn()) {
      text.append("; saturation at the entering water is ")
          .append(Wording.megapascals(first.waterLiftPa().orElseThrow()));
    }
    first
        .powerW()
        .ifPresent(
            power -> text.append("; the compressor draws ").append(Wording.kilowatts(power)));
    if (failed.size() > 1) {
      text.append("; the same at ").append(failed.size()).append(" starts");
    }
    return text.toString();
  }
}
