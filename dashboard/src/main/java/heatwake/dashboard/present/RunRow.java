package heatwake.dashboard.present;

import heatwake.collector.store.RunHeading;

/**
 * A run in a list to choose from.
 *
 * @param run its number
 * @param text number, site, start with its year (a complaint is held against a start-up of years
 *     ago) and length
 */
public record RunRow(long run, String text) {
  public static RunRow of(RunHeading heading, Moment moment) {
    String length =
        heading.endMs().isPresent()
            ? Moment.duration(heading.endMs().getAsLong() - heading.startMs())
            : "recording";
    return new RunRow(
        heading.id(),
        "Run "
            + heading.id()
            + "  ·  "
            + heading.shown()
            + "  ·  "
            + moment.dayAndTime(heading.startMs())
            + "  ·  "
            + length);
  }

  @Override
  public String toString() {
    return text;
  }
}
