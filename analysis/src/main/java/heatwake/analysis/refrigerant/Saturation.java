package heatwake.analysis.refrigerant;

import heatwake.analysis.approximation.Polynomial;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.OutOfRangeException;
import java.util.EnumMap;
import java.util.Map;

/**
 * Bubble and dew line of a refrigerant, pressure from temperature and back; equations and sources
 * in {@link PublishedLines}. Subcooling is counted from the bubble temperature, superheat from the
 * dew temperature; for a pure substance they are one.
 *
 * <p>Temperature from pressure goes by a polynomial in the logarithm of the pressure, made once
 * from the equation and within 0.002 K of it, so that a whole night can be converted at every
 * instant.
 */
public final class Saturation {
  /** Lower end for every refrigerant: its pressure there is below one atmosphere. */
  public static final double LOWEST_K = 213.15;

  /** Degree at which every line's inverse has settled; the tests show how well. */
  private static final int INVERSE_DEGREE = 16;

  private static final int BISECTIONS = 60;

  private static final Map<Refrigerant, Saturation> ALL = new EnumMap<>(Refrigerant.class);

  static {
    for (Refrigerant refrigerant : Refrigerant.values()) {
      ALL.put(refrigerant, new Saturation(refrigerant));
    }
  }

  private final String name;
  private final double highestK;
  private final Curve bubble;
  private final Curve dew;

  private Saturation(Refrigerant refrigerant) {
    name = refrigerant.designation();
    highestK = PublishedLines.highestK(refrigerant);
    bubble = new Curve(PublishedLines.bubble(refrigerant), name + " bubble", highestK);
    dew = new Curve(PublishedLines.dew(refrigerant), name + " dew", highestK);
  }

  /** The lines of a refrigerant. */
  public static Saturation of(Refrigerant refrigerant) {
    return ALL.get(refrigerant);
  }

  /** Upper end of the temperatures covered. */
  public double highestK() {
    return highestK;
  }

  /**
   * Pressure at which the liquid begins to boil.
   *
   * @throws OutOfRangeException outside {@value #LOWEST_K} K to {@link #highestK}
   */
  public AbsolutePressure bubblePressure(double tK) {
    return bubble.pressure(tK);
  }

  /**
   * Pressure at which the vapour begins to condense.
   *
   * @throws OutOfRangeException outside {@value #LOWEST_K} K to {@link #highestK}
   */
  public AbsolutePressure dewPressure(double tK) {
    return dew.pressure(tK);
  }

  /**
   * Temperature at which the liquid begins to boil.
   *
   * @throws OutOfRangeException outside the pressures of the temperature range
   */
  public double bubbleTemperatureK(AbsolutePressure pressure) {
    return bubble.temperatureK(pressure.pa());
  }

  /**
   * Temperature at which the vapour begins to condense.
   *
   * @throws OutOfRangeException outside the pressures of the temperature range
   */
  public double dewTemperatureK(AbsolutePressure pressure) {
    return dew.temperatureK(pressure.pa());
  }

  /**
   * Bubble temperatures of a whole run from gauge pressures: NaN where there is no reading or it is
   * out of range.
   *
   * @param gaugePa gauge pressures, pascal
   * @param atmosphere pressure of the air at the site
   */
  public double[] bubbleTemperaturesK(double[] gaugePa, AbsolutePressure atmosphere) {
    return bubble.temperaturesK(gaugePa, atmosphere.pa());
  }

  /** Dew temperatures of a whole run; see {@link #bubbleTemperaturesK}. */
  public double[] dewTemperaturesK(double[] gaugePa, AbsolutePressure atmosphere) {
    return dew.temperaturesK(gaugePa, atmosphere.pa());
  }

  @Override
  public String toString() {
    return "saturation of " + name;
  }

  /** One line both ways. */
  private static final class Curve {
    private final SaturationLine line;
    private final String name;
    private final double highestK;
    private final double lowestPa;
    private final double highestPa;
    private final Polynomial inverse;

    Curve(SaturationLine line, String name, double highestK) {
      this.line = line;
      this.name = name;
      this.highestK = highestK;
      lowestPa = line.pressurePa(LOWEST_K);
      highestPa = line.pressurePa(highestK);
      inverse =
          Polynomial.through(
              this::temperatureByBisection,
              Math.log(lowestPa),
              Math.log(highestPa),
              INVERSE_DEGREE);
    }

    AbsolutePressure pressure(double tK) {
      OutOfRangeException.check(name + " temperature", tK, "K", LOWEST_K, highestK);
      return new AbsolutePressure(line.pressurePa(tK));
    }

    double temperatureK(double pa) {
      OutOfRangeException.check(name + " absolute pressure", pa, "Pa", lowestPa, highestPa);
      return inverse.at(Math.log(pa));
    }

    double[] temperaturesK(double[] gaugePa, double atmospherePa) {
      double[] temperatures = new double[gaugePa.length];
      for (int i = 0; i < temperatures.length; i++) {
        double pa = gaugePa[i] + atmospherePa;
        temperatures[i] = pa >= lowestPa && pa <= highestPa ? inverse.at(Math.log(pa)) : Double.NaN;
      }
      return temperatures;
    }

    /** Slow and sure; the lines rise without a break. */
    private double temperatureByBisection(double logPa) {
      double low = LOWEST_K;
      double high = highestK;
      for (int i = 0; i < BISECTIONS; i++) {
        double middle = (low + high) / 2;
        if (Math.log(line.pressurePa(middle)) < logPa) {
          low = middle;
        } else {
          high = middle;
        }
      }
      return (low + high) / 2;
    }
  }
}
