package heatwake.analysis.reference;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;

/** Gathers how far results lie from reference values, prints the worst, and holds it to a limit. */
public final class WorstDeviation {
  private final String what;
  private final String unit;
  private double worst;
  private int count;
  private String where = "";

  /**
   * @param unit unit of the deviations, for the printed line
   */
  public WorstDeviation(String what, String unit) {
    this.what = what;
    this.unit = unit;
  }

  /** Counts an absolute deviation. */
  public void add(double got, double expected, String at) {
    count(Math.abs(got - expected), at);
  }

  /** Counts a deviation relative to the expected value. */
  public void addRelative(double got, double expected, String at) {
    count(Math.abs(got / expected - 1), at);
  }

  private void count(double deviation, String at) {
    count++;
    if (!(deviation <= worst)) {
      worst = deviation;
      where = at;
    }
  }

  /** Prints the worst deviation and fails when it is above the limit or nothing was compared. */
  public void assertWithin(double limit) {
    System.out.printf(
        Locale.ROOT,
        "%s: worst of %d is %.3g %s at %s (limit %.3g)%n",
        what,
        count,
        worst,
        unit,
        where,
        limit);
    assertThat(count).as("values compared for " + what).isPositive();
    assertThat(worst).as(what + ", at " + where).isLessThanOrEqualTo(limit);
  }
}
