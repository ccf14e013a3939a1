package heatwake.dashboard.present;

/** How something stands, for whoever gives it a colour or a sign. */
public enum Tone {
  /** As it should be. */
  GOOD,
  /** Neither good nor bad. */
  PLAIN,
  /** To be mended. */
  WARNING,
  /** Stop and see to it. */
  ALARM,
  /** Old, or not known. */
  STALE
}
