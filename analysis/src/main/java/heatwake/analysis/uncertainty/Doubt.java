package heatwake.analysis.uncertainty;

/**
 * When a figure lies beyond a limit for certain. A rule alarms only where the residual exceeds
 * {@value #FACTOR} standard uncertainties: with honest uncertainties one healthy figure in about
 * 700 goes that far to one side (normal distribution). Steady-state fault detectors in the
 * literature choose their neutral band the same way, from a confidence level (NIST SP 1087, 2008,
 * gives 99 % as its example).
 */
public final class Doubt {
  /** Standard uncertainties between a limit and a figure that is beyond it without doubt. */
  public static final double FACTOR = 3;

  private Doubt() {}

  /** Whether a figure is above a limit beyond doubt. */
  public static boolean above(Estimate figure, double limit) {
    return figure.value() - FACTOR * figure.standard() > limit;
  }

  /** Whether a figure is below a limit beyond doubt. */
  public static boolean below(Estimate figure, double limit) {
    return figure.value() + FACTOR * figure.standard() < limit;
  }
}
