package heatwake.analysis.phase;

/**
 * A pressure that a running compressor holds up. It has let go once the pressure has fallen well
 * under what it lately was; a slower compressor brings it down no faster than it is forgotten.
 */
final class HeldLift {
  /** Let go when the lift has fallen under this share of what it lately was (ours). */
  private static final double FALLEN_SHARE = 0.7;

  private static final double MEMORY_S = 120;

  private final double memory;
  private double recent;

  HeldLift(long stepMs) {
    this.memory = Math.min(1, stepMs / (MEMORY_S * 1000));
  }

  /** The compressor has just begun to lift. */
  void begin(double lift) {
    recent = lift;
  }

  /** Takes in the next value, and says whether it is held up. */
  boolean holds(double lift) {
    recent = Math.max(lift, recent + memory * (lift - recent));
    return lift >= FALLEN_SHARE * recent;
  }
}
