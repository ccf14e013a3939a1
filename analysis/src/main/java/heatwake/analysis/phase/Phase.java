package heatwake.analysis.phase;

/** What the heater is doing. Each instant of a run belongs to exactly one phase. */
public enum Phase {
  OFF("off", "no water moving"),
  CIRCULATING("circulating", "water moves, fan and compressor rest"),
  FAN("fan", "fan runs, compressor rests"),
  STARTING("starting", "compressor on, not yet steady"),
  STEADY("steady", "compressor on, steady"),
  DEFROST("defrost", "ice is being melted off the air coil"),
  UNKNOWN("unknown", "not enough readings to say");

  private final String id;
  private final String meaning;

  Phase(String id, String meaning) {
    this.id = id;
    this.meaning = meaning;
  }

  public String id() {
    return id;
  }

  public String meaning() {
    return meaning;
  }

  /** Whether the compressor runs in this phase (it also drives a defrost). */
  public boolean compressorRuns() {
    return this == STARTING || this == STEADY || this == DEFROST;
  }
}
