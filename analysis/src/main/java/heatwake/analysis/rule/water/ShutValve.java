package heatwake.analysis.rule.water;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.phase.PastHeater;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * All water goes past a heater that wants to heat: it stops, its water stands warm while the return
 * has nothing of it, and what it tries meanwhile ends within minutes. A valve that lets the water
 * past a resting heater on purpose opens before it starts.
 *
 * @param stretch from the stop for want of water until water moves again, or the run ends
 * @param tries short runs of the compressor within it
 * @param standsK leaving water over entering water meanwhile
 * @param comesBackK returning water over entering water meanwhile
 */
record ShutValve(Stretch stretch, List<Stretch> tries, double standsK, double comesBackK) {

  ShutValve {
    tries = List.copyOf(tries);
  }

  /** The first such time of a run. */
  static Optional<ShutValve> of(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = evidence.phaseGrid();
    return PastHeater.of(timeline, phases::compressorRuns).stream()
        .map(stretch -> of(timeline, phases, stretch))
        .filter(one -> !one.tries.isEmpty())
        .findFirst();
  }

  private static ShutValve of(Timeline timeline, PhaseGrid phases, Stretch stretch) {
    double inK = stretch.mean(timeline.of(Channel.WATER_IN));
    return new ShutValve(
        stretch,
        Stretch.where(
            phases.size(),
            i -> i >= stretch.from() && i < stretch.to() && phases.compressorRuns(i)),
        stretch.mean(timeline.of(Channel.WATER_OUT)) - inK,
        stretch.mean(timeline.of(Channel.WATER_RETURN)) - inK);
  }

  Flag flag(String rule, Timeline timeline) {
    Set<Channel> channels = EnumSet.of(Channel.WATER_IN, Channel.WATER_OUT, Channel.WATER_RETURN);
    return new Flag(
        rule,
        Side.WATER,
        Severity.ALARM,
        timeline.timeMs(stretch.from()),
        timeline.timeMs(stretch.to() - 1),
        "No water through the heater for "
            + Wording.duration(stretch.durationS(timeline))
            + ": water-out stood "
            + Wording.kelvin(standsK)
            + " above water-in, water-return "
            + Wording.kelvin(comesBackK)
            + ", so all water went past it; it stopped, and tried "
            + (tries.size() == 1 ? "once" : tries.size() + " times")
            + " to run on",
        List.of(
            "valve at the heater closed, or bypass fully open",
            "flow switch stuck closed, bridged or set too low: it let the heater start"),
        "Switch the heater off. See that the valves before and after the heater are open, then"
            + " have the flow switch checked: it must open when the water stops.",
        channels);
  }
}
