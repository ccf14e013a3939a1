package heatwake.analysis.rule;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.timeline.Stretch;
import java.util.List;

/**
 * The fan alone for a short time right beside a run of the compressor: it leads the start, or runs
 * on after the stop. What draws like a fan there is the heater's own, and no other load.
 *
 * @param stretch from its first instant up to the compressor's start, or from the stop on
 * @param leads whether the start follows; else it comes after the stop
 */
public record ShortFan(Stretch stretch, boolean leads) {
  /** A fan leads a start, and mostly runs on, no longer than this (common practice), s. */
  private static final double LONGEST_S = 180;

  /** Every one in a run, in order. */
  public static List<ShortFan> in(Evidence evidence) {
    PhaseGrid phases = evidence.phaseGrid();
    return Stretch.where(phases.size(), i -> phases.is(i, Phase.FAN)).stream()
        .filter(one -> one.durationS(evidence.timeline()) <= LONGEST_S)
        .filter(one -> one.from() > 0 && one.to() < phases.size())
        .filter(one -> phases.compressorRuns(one.from() - 1) != phases.compressorRuns(one.to()))
        .map(one -> new ShortFan(one, phases.compressorRuns(one.to())))
        .toList();
  }
}
