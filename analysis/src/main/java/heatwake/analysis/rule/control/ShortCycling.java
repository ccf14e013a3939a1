package heatwake.analysis.rule.control;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Compressor starts too close together. */
public final class ShortCycling implements Rule {
  /**
   * Starts that make it cycling when they fall into the time below: makers of compressors commonly
   * allow 6 to 10 starts an hour as the outermost, and a pool, which takes hours to cool by a
   * controller's dead band, gives no reason for more than one or two; common practice, limit ours.
   */
  private static final int STARTS = 4;

  private static final double WITHIN_S = 45 * 60;

  private static final double HOUR_S = 3600;

  @Override
  public String id() {
    return "short-cycling";
  }

  @Override
  public String summary() {
    return "Compressor starts come too close together.";
  }

  @Override
  public String needs() {
    return "power, current, pressure-discharge or energy, read at least every 2 min";
  }

  @Override
  public String limits() {
    return "4 starts within 45 min. Compressor makers commonly allow 6 to 10 starts an hour at the"
        + " very most; a pool cools so slowly that a sound control starts once or twice (common"
        + " practice, limit ours). Defrosts are not starts. By an energy"
        + " counter alone the 45 min are shorter by two of its readings, and runs and rests count that"
        + " last two or more (ours).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    double everyS = CompressorSight.everyS(timeline).orElse(Double.POSITIVE_INFINITY);
    if (everyS > 120) {
      return Outcome.notEnoughData(
          "no power, current, pressure-discharge or energy read at least every 2 min");
    }
    List<Cycle> started = CompressorSight.started(evidence);
    // By a counter both ends of a bout stay open by the time between its readings.
    double openS = CompressorSight.isCounted(timeline) ? 2 * everyS : 0;
    List<Flag> flags = new ArrayList<>();
    for (int first = 0; first + STARTS <= started.size(); ) {
      int last = first + STARTS - 1;
      if (!isClose(started, first, last, openS)) {
        first++;
        continue;
      }
      while (last + 1 < started.size() && isClose(started, last + 2 - STARTS, last + 1, openS)) {
        last++;
      }
      flags.add(flag(evidence, started.subList(first, last + 1)));
      first = last + 1;
    }
    return Outcome.of(flags);
  }

  private static boolean isClose(List<Cycle> started, int first, int last, double openS) {
    return (started.get(last).startMs() - started.get(first).startMs()) / 1e3 + openS <= WITHIN_S;
  }

  private Flag flag(Evidence evidence, List<Cycle> bout) {
    Cycle last = bout.get(bout.size() - 1);
    long startMs = bout.get(0).startMs();
    long endMs = last.stopMs().orElse(evidence.recording().endMs());
    double shortestRestS = Double.POSITIVE_INFINITY;
    double longestRunS = 0;
    for (int k = 0; k + 1 < bout.size(); k++) {
      long stop = bout.get(k).stopMs().orElse(bout.get(k + 1).startMs());
      shortestRestS = Math.min(shortestRestS, (bout.get(k + 1).startMs() - stop) / 1e3);
      longestRunS = Math.max(longestRunS, (stop - bout.get(k).startMs()) / 1e3);
    }
    double busiestS = (last.startMs() - startMs) / 1e3;
    int starts = bout.size();
    if (busiestS > HOUR_S) {
      starts = busiestHour(bout);
      busiestS = HOUR_S;
    }
    SwitchedStops switched = SwitchedStops.of(bout, evidence.timeline());
    String text =
        starts
            + " starts in "
            + Math.max(1, Math.round(Math.min(HOUR_S, Math.max(busiestS, 60)) / 60))
            + " min, shortest rest "
            + Wording.duration(shortestRestS)
            + ", longest run "
            + Wording.duration(longestRunS)
            + (starts < bout.size() ? "; " + bout.size() + " starts in all" : "")
            + counted(evidence.timeline())
            + (switched.areMost()
                ? "; the flow switch opened at " + switched.opened() + " of these stops"
                : "");
    return new Flag(
        id(),
        Side.CONTROL,
        Severity.WARNING,
        startMs,
        endMs,
        text,
        causes(evidence, bout, switched),
        switched.areMost()
            ? "See why the flow switch opens: water through the heater, strainer and filter, then the"
                + " switch's own setting, paddle and wiring."
            : "See which protection or thermostat stops it: read the heater's fault memory, watch flow"
                + " switch and pressures through one stop.",
        Set.of());
  }

  private static String counted(Timeline timeline) {
    return CompressorSight.isCounted(timeline)
        ? "; by the energy counter, read every "
            + Wording.duration(CompressorSight.everyS(timeline).orElseThrow())
        : "";
  }

  private static int busiestHour(List<Cycle> bout) {
    int most = 0;
    for (int first = 0, last = 0; last < bout.size(); last++) {
      while ((bout.get(last).startMs() - bout.get(first).startMs()) / 1e3 > HOUR_S) {
        first++;
      }
      most = Math.max(most, last - first + 1);
    }
    return most;
  }

  /** The stops tell: with the flow switch open, at the set temperature, or neither. */
  private static List<String> causes(Evidence evidence, List<Cycle> bout, SwitchedStops switched) {
    String flow = "flow switch flutters: too little water, or the switch set too high";
    String sensor = "water sensor or dead band: the control sees the set temperature too soon";
    String cutOut = "a protection cuts out (high or low pressure, thermal) and resets";
    if (switched.areMost()) {
      return List.of(flow, cutOut, sensor);
    }
    Timeline timeline = evidence.timeline();
    HeatCall call =
        HeatCall.over(
            evidence,
            timeline.indexAt(bout.get(0).startMs()),
            timeline.indexAt(bout.get(bout.size() - 1).startMs()));
    return call.calls() ? List.of(cutOut, sensor, flow) : List.of(sensor, cutOut, flow);
  }
}
