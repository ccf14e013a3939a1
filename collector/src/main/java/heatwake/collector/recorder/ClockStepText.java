package heatwake.collector.recorder;

import java.util.Locale;

/** Says what a step of the clock means for the run. */
final class ClockStepText {
  private ClockStepText() {}

  static String of(RunTime.Step step) {
    String size = String.format(Locale.ROOT, "%.1f s", Math.abs(step.byMs()) / 1000.0);
    String what = "the logger's clock was set " + (step.byMs() > 0 ? "forward by " : "back by ");
    if (step.aheadMs() == 0) {
      return what + size + " (or the machine slept); the run follows it";
    }
    return what
        + size
        + String.format(
            Locale.ROOT,
            "; so as not to record one moment twice, the run's time is %.1f s ahead of it from here",
            step.aheadMs() / 1000.0);
  }
}
