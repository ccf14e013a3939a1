package heatwake.analysis.phase;

/** A stretch of one phase, from {@code startMs} up to but not including {@code endMs}. */
public record PhaseSpan(Phase phase, long startMs, long endMs) {
  public double durationS() {
    return (endMs - startMs) / 1e3;
  }
}
