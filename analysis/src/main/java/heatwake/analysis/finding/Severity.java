package heatwake.analysis.finding;

/** How much a flag matters. */
public enum Severity {
  /** Worth knowing; nothing to mend today. */
  INFO("info"),
  /** Costs heat, money or the evidence; to be mended. */
  WARNING("warning"),
  /** Stop and see to it: can damage the heater or hurt someone. */
  ALARM("alarm");

  private final String id;

  Severity(String id) {
    this.id = id;
  }

  public String id() {
    return id;
  }
}
