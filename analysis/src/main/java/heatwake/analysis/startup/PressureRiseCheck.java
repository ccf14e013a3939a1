package heatwake.analysis.startup;

import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.refrigerant.FailedStarts;
import heatwake.analysis.rule.refrigerant.PressedStarts;
import heatwake.analysis.rule.refrigerant.StartPressures;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Optional;

/**
 * The high side climbs when the compressor starts. Its rise is judged, not its level: the standing
 * pressure goes with the weather.
 */
final class PressureRiseCheck implements Check {
  /** The climb is over within this time, s; common practice. */
  private static final double SETTLED_S = 300;

  /** A shorter run does not show it, s; ours. */
  private static final double LEAST_RUN_S = 120;

  private static final double WINDOW_S = 30;

  /** The climb counts as done at this share of it. */
  private static final double DONE = 0.95;

  @Override
  public StartupCheck.Item item() {
    return StartupCheck.Item.PRESSURE_RISE;
  }

  @Override
  public StartupCheck look(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.PRESSURE_DISCHARGE)) {
      return notMeasured("no pressure-discharge reading");
    }
    Optional<CompressorStart> start =
        CompressorStart.first(evidence).filter(one -> one.ranS() >= LEAST_RUN_S);
    if (start.isEmpty()) {
      return notSeen("a compressor start followed by 2 min of running");
    }
    PressedStarts pressed = PressedStarts.in(evidence);
    Optional<FailedStarts> failed =
        pressed.failed().stream().filter(one -> one.startMs() == start.get().startMs()).findFirst();
    if (failed.isPresent()) {
      return fail(start.get().startMs(), failed.get().words());
    }
    double[] high = timeline.of(Channel.PRESSURE_DISCHARGE);
    int window = (int) Math.max(1, Math.round(WINDOW_S / timeline.stepS()));
    int at = timeline.firstAtOrAfter(start.get().startMs());
    int last =
        Math.min(
            timeline.firstAtOrAfter(start.get().stopMs()),
            at + (int) Math.round(SETTLED_S / timeline.stepS()));
    double beforePa = Stretch.mean(high, at - window, at);
    double afterPa = Stretch.mean(high, last - window, last);
    if (Double.isNaN(beforePa) || Double.isNaN(afterPa)) {
      return notSeen("pressure readings before and after a compressor start");
    }
    String text = Wording.inMegapascals(beforePa) + " to " + Wording.megapascals(afterPa);
    boolean rises =
        afterPa - beforePa
            >= StartPressures.LEAST_RISE * (beforePa + AbsolutePressure.STANDARD_ATMOSPHERE.pa());
    if (!rises) {
      return byOtherSigns(start.get(), pressed, text);
    }
    int done = at;
    while (done < last - 1 && !(high[done] >= beforePa + DONE * (afterPa - beforePa))) {
      done++;
    }
    return pass(
        timeline.timeMs(done), text + " in " + Wording.seconds((done - at) * timeline.stepS()));
  }

  /**
   * In air warmer than the water a sound heater's high side stands high before it starts, and need
   * not climb.
   */
  private StartupCheck byOtherSigns(CompressorStart start, PressedStarts pressed, String text) {
    Optional<StartPressures> pressures = pressed.at(start.startMs());
    if (pressures.filter(StartPressures::isUnspread).isPresent()) {
      return fail(
          start.startMs(), text + "; a sound compressor raises it by 10 %, or parts the two sides");
    }
    return pressures
        .flatMap(StartPressures::otherProof)
        .map(proof -> pass(start.startMs(), text + "; it compresses all the same: " + proof))
        .orElseGet(
            () ->
                notSeen(
                    text
                        + ", which in air warmer than the water need not be more; to tell, clip"
                        + " pressure-suction, or water-in and water-out"));
  }
}
