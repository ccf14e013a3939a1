package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Spell;
import java.util.List;
import java.util.Optional;
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

  private static final String SECOND_GAUGE =
      "Put a second gauge on the high side during a start; if it agrees, stop the heater and"
          + " have a certified refrigerant handler test compressor and reversing valve.";

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
        + " more than 2 % may be the pool pump's, and the side is open then (ours). A draw under 300 W may be the fan's"
        + " unless the sides part by more than 5 % of the low side (ours). Or where, for 10 min of"
        + " steady running, condensing and evaporating temperature lie less than 10 K apart, but 1 K beyond"
        + " doubt (so the compressor turns), and the water takes up beyond doubt less than 5 times the power"
        + " drawn, which is above 300 W (half of Carnot's COP over 10 K is 15, the fan's power aside 10: common"
        + " practice; half of it: ours), the heater seen at rest with nothing else on its meter.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    if (!evidence.timeline().has(Channel.PRESSURE_DISCHARGE)) {
      return Outcome.notEnoughData("no pressure-discharge reading");
    }
    PressedStarts starts = PressedStarts.in(evidence);
    List<FailedStarts> failed = starts.failed();
    if (!failed.isEmpty()) {
      return Outcome.of(failed.stream().map(this::flag).toList());
    }
    Optional<Spell> idle = IdleLift.in(evidence);
    if (idle.isPresent()) {
      return Outcome.flagged(flag(idle.get()));
    }
    return starts.isEmpty()
        ? Outcome.notEnoughData(
            "no compressor start with five minutes of running and pressure readings around it")
        : Outcome.clear();
  }

  private Flag flag(Spell idle) {
    return new Flag(
        id(),
        Side.REFRIGERANT,
        Severity.ALARM,
        idle.startMs(),
        idle.endMs(),
        IdleLift.words(idle),
        CAUSES,
        SECOND_GAUGE,
        Set.of(
            Channel.PRESSURE_DISCHARGE,
            Channel.PRESSURE_SUCTION,
            Channel.WATER_IN,
            Channel.WATER_OUT,
            Channel.POWER));
  }

  private Flag flag(FailedStarts failed) {
    return new Flag(
        id(),
        failed.mayBePump() ? Side.UNDECIDED : Side.REFRIGERANT,
        failed.mayBePump() ? Severity.WARNING : Severity.ALARM,
        failed.startMs(),
        failed.endMs(),
        failed.words(),
        failed.mayBePump()
            ? Stream.concat(
                    Stream.of(
                        "the pool pump on the heater's meter, and a compressor that never ran"),
                    CAUSES.stream())
                .toList()
            : CAUSES,
        failed.mayBePump()
            ? "Switch the heater off with the pool pump running and read the power: what stands"
                + " then is another load's."
            : SECOND_GAUGE,
        Set.of(Channel.PRESSURE_DISCHARGE));
  }
}
