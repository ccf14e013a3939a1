package heatwake.dashboard.present;

import java.util.Locale;

/** Says of a sum which part of its time is known, where that is not as good as all of it. */
final class KnownPart {
  /** From here on nobody would miss what is not known; ours, far inside a heat's uncertainty. */
  private static final double AS_GOOD_AS_ALL = 0.99;

  private KnownPart() {}

  static boolean isAll(double known) {
    return known >= AS_GOOD_AS_ALL;
  }

  /** {@code "72 %"}. */
  static String percent(double known) {
    return String.format(Locale.ROOT, "%.0f %%", 100 * known);
  }
}
