package heatwake.analysis.sensor;

import heatwake.analysis.quantity.OutOfRangeException;

/**
 * A register that only counts up, returns to zero at its modulus, and may be reset.
 *
 * @param modulus count at which it returns to zero: 65536 for 16 bits, 100000 for five digits;
 *     infinite where it never does
 * @param mostPerS most counts a second that can be true; infinite where nothing is known
 */
public record CountRegister(double modulus, double mostPerS) {
  /** A fall is taken for a roll-over only if it means less than this share of the modulus; ours. */
  static final double ROLL_OVER_SHARE = 0.1;

  /** A register that never returns to zero of itself. */
  public static final CountRegister ENDLESS =
      new CountRegister(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

  public CountRegister {
    if (!(modulus > 0)) {
      throw new OutOfRangeException(
          "roll-over of a counter", modulus, "1", Double.MIN_VALUE, Double.POSITIVE_INFINITY);
    }
    if (!(mostPerS > 0)) {
      throw new OutOfRangeException(
          "greatest count rate", mostPerS, "1/s", Double.MIN_VALUE, Double.POSITIVE_INFINITY);
    }
  }

  /** What happened between two looks at the register. */
  public sealed interface Step {
    /** It counted, through zero or not. */
    record Counted(double counts) implements Step {}

    /**
     * It was reset or exchanged, so what was counted before that is lost.
     *
     * @param countsSince counts that are certain: those since zero, where it began at zero
     */
    record Reset(double countsSince, String reason) implements Step {}
  }

  /** Compares two looks at the register, {@code elapsedS} apart. */
  public Step between(double before, double now, double elapsedS) {
    double most = mostPerS * Math.max(elapsedS, 0) + 1;
    double counts = now - before;
    if (counts >= 0) {
      return counts <= most
          ? new Step.Counted(counts)
          : new Step.Reset(
              0,
              sentence("jumped", before, now, elapsedS)
                  + ", more than it can have counted; taken as another counter");
    }
    double wrapped = counts + modulus;
    if (wrapped <= most && wrapped <= ROLL_OVER_SHARE * modulus) {
      return new Step.Counted(wrapped);
    }
    return new Step.Reset(
        now <= most ? now : 0,
        sentence("fell", before, now, elapsedS)
            + "; taken as a reset, what was counted before it is lost");
  }

  private static String sentence(String did, double before, double now, double elapsedS) {
    return "the counter "
        + did
        + " from "
        + FaultText.plain(before)
        + " to "
        + FaultText.plain(now)
        + " in "
        + FaultText.plain(elapsedS)
        + " s";
  }
}
