package heatwake.collector.probe;

import java.time.Duration;

/** How long to wait before the next attempt: doubling from a first wait to a longest one. */
public final class Backoff {
  private final Duration first;
  private final Duration longest;
  private Duration next;

  public Backoff(Duration first, Duration longest) {
    this.first = first;
    this.longest = longest;
    this.next = first;
  }

  /** The wait before the coming attempt. */
  public Duration next() {
    Duration wait = next;
    Duration doubled = next.multipliedBy(2);
    next = doubled.compareTo(longest) < 0 ? doubled : longest;
    return wait;
  }

  /** An attempt succeeded: begin anew. */
  public void reset() {
    next = first;
  }
}
