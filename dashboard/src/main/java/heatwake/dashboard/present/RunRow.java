package heatwake.dashboard.present;

import heatwake.collector.store.RunSummary;

/**
 * A run in a list to choose from.
 *
 * @param run its number
 * @param text number, site, start and length
 */
public record RunRow(long run, String text) {
  public static RunRow of(RunSummary summary, Moment moment) {
    String length =
        summary.endMs().isPresent()
            ? Moment.duration(summary.endMs().getAsLong() - summary.startMs())
            : "recording";
    return new RunRow(
        summary.id(),
        "Run "
            + summary.id()
            + "  ·  "
            + summary.site()
            + "  ·  "
            + moment.shortDayAndTime(summary.startMs())
            + "  ·  "
            + length);
  }

  @Override
  public String toString() {
    return text;
  }
}
