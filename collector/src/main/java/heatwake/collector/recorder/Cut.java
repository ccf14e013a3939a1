package heatwake.collector.recorder;

import java.time.Instant;
import java.time.ZoneId;

/** When a run is cut, that is ended, and a new one begun without losing a reading between. */
public sealed interface Cut {
  /** Whether it is time. */
  boolean isDue(long beganMs, long nowMs, long readings);

  /** Never: a run lasts as long as the recorder. */
  record Never() implements Cut {
    @Override
    public boolean isDue(long beganMs, long nowMs, long readings) {
      return false;
    }
  }

  /** At midnight, local time. */
  record Daily(ZoneId zone) implements Cut {
    @Override
    public boolean isDue(long beganMs, long nowMs, long readings) {
      Instant midnight =
          Instant.ofEpochMilli(beganMs)
              .atZone(zone)
              .toLocalDate()
              .plusDays(1)
              .atStartOfDay(zone)
              .toInstant();
      return nowMs >= midnight.toEpochMilli();
    }
  }

  /** After so many readings. */
  record Readings(long most) implements Cut {
    @Override
    public boolean isDue(long beganMs, long nowMs, long readings) {
      return readings >= most;
    }
  }
}
