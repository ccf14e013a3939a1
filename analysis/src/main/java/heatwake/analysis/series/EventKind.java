package heatwake.analysis.series;

import java.util.Arrays;

/** What can happen to a recording. The id stands in the database. */
public enum EventKind {
  SOURCE_LOST("source-lost", "a source could not be reached"),
  PROBE_SILENT("probe-silent", "a probe stopped sending"),
  UNREADABLE("unreadable", "a message or line that could not be understood"),
  OUT_OF_RANGE("out-of-range", "a reading outside what its channel can be"),
  SENSOR_FAULT("sensor-fault", "a sensor loop reports open, short or a fault level"),
  DUPLICATE("duplicate", "a reading that was already stored"),
  TIME_CONFLICT("time-conflict", "two different readings of one channel with one time stamp"),
  TIME_REFUSED("time-refused", "a time stamp that cannot be right"),
  PROBE_CLOCK("probe-clock", "a probe's own clock is far from the logger's"),
  FLOODING("flooding", "more readings than a probe can mean"),
  CLIENT_REFUSED("client-refused", "a client was not let into the embedded broker"),
  CLOCK_STEP("clock-step", "the logger's clock jumped"),
  STORE_BLOCKED("store-blocked", "the database could not be written for a while"),
  RECORDER_STARTED("recorder-started", "the recorder started or went on"),
  RECORDER_STOPPED("recorder-stopped", "the recorder was stopped or found to have been killed");

  private final String id;
  private final String meaning;

  EventKind(String id, String meaning) {
    this.id = id;
    this.meaning = meaning;
  }

  public String id() {
    return id;
  }

  /** One line of explanation. */
  public String meaning() {
    return meaning;
  }

  /** The kind with this id. */
  public static EventKind of(String id) {
    return Arrays.stream(values())
        .filter(kind -> kind.id.equals(id))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no event is called " + id));
  }
}
