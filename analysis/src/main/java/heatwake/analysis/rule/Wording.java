package heatwake.analysis.rule;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Numeral;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.uncertainty.Estimate;
import java.math.MathContext;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Writes SI figures in the units a technician reads, for the sentences of rules. */
public final class Wording {
  private static final double ICE_POINT_K = 273.15;
  private static final double L_PER_MIN = 60_000;

  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

  /** Of what no probe means, as many digits as tell what was sent. */
  private static final MathContext SHORT = new MathContext(3);

  private Wording() {}

  /** A temperature: {@code 38.9 °C}. */
  public static String celsius(double temperatureK) {
    return fixed(temperatureK - ICE_POINT_K, 1) + " °C";
  }

  /** A temperature difference: {@code 2.4 K}. */
  public static String kelvin(double differenceK) {
    return fixed(differenceK, 1) + " K";
  }

  /** A small temperature difference with its expanded uncertainty: {@code −0.09 ± 0.01 K}. */
  public static String kelvin(Estimate differenceK) {
    return fixed(differenceK.value(), 2) + " ± " + fixed(differenceK.expanded(), 2) + " K";
  }

  /** A flow: {@code 62 L/min}. */
  public static String flow(double flowM3PerS) {
    double perMinute = flowM3PerS * L_PER_MIN;
    return fixed(perMinute, Math.abs(perMinute) < 10 ? 1 : 0) + " L/min";
  }

  /** A power: {@code 15.3 kW}. */
  public static String kilowatts(double powerW) {
    return fixed(powerW / 1e3, 1) + " kW";
  }

  /** A gauge pressure of the refrigerant: {@code 2.31 MPa}. */
  public static String megapascals(double pressurePa) {
    return fixed(pressurePa / 1e6, 2) + " MPa";
  }

  /** The same without the unit, for the first of two: {@code 1.52}. */
  public static String inMegapascals(double pressurePa) {
    return fixed(pressurePa / 1e6, 2);
  }

  /** A length of time in seconds: {@code 140 s}. */
  public static String seconds(double durationS) {
    return fixed(durationS, 0) + " s";
  }

  /** A gauge pressure of the water: {@code 84 kPa}. */
  public static String kilopascals(double pressurePa) {
    return fixed(pressurePa / 1e3, 0) + " kPa";
  }

  /** An energy: {@code 61 kWh}. */
  public static String kilowattHours(double energyJ) {
    double kWh = energyJ / 3.6e6;
    return fixed(kWh, Math.abs(kWh) < 10 ? 1 : 0) + " kWh";
  }

  /** The same with its expanded uncertainty: {@code 61 ± 5 kWh}. */
  public static String kilowattHours(Estimate energyJ) {
    double kWh = energyJ.value() / 3.6e6;
    int decimals = Math.abs(kWh) < 10 ? 1 : 0;
    return fixed(kWh, decimals) + " ± " + fixed(energyJ.expanded() / 3.6e6, decimals) + " kWh";
  }

  /** A share: {@code 78 %}. */
  public static String percent(double share) {
    return fixed(share * 100, 0) + " %";
  }

  /** A share with its expanded uncertainty: {@code 78 ± 6 %}. */
  public static String percent(Estimate share) {
    return fixed(share.value() * 100, 0) + " ± " + fixed(share.expanded() * 100, 0) + " %";
  }

  /** A length of time: {@code 95 s}, {@code 25 min}, {@code 3.5 h}. */
  public static String duration(double durationS) {
    if (durationS < 120) {
      return fixed(durationS, 0) + " s";
    }
    return durationS < 2 * 3600
        ? fixed(durationS / 60, 0) + " min"
        : fixed(durationS / 3600, 1) + " h";
  }

  /** A length of time to the second: {@code 45 s}, {@code 2 h 55 min 44 s}. */
  public static String toTheSecond(double durationS) {
    long seconds = Math.round(durationS);
    String text =
        (seconds >= 3600 ? seconds / 3600 + " h " : "")
            + (seconds % 3600 >= 60 ? seconds % 3600 / 60 + " min " : "")
            + (seconds % 60 > 0 || seconds == 0 ? seconds % 60 + " s" : "");
    return text.trim();
  }

  /** A moment: {@code 2031-05-04 18:00 UTC}; a run does not know where its site's clocks stand. */
  public static String moment(long timeMs) {
    return MOMENT.format(Instant.ofEpochMilli(timeMs));
  }

  /** A reading of a channel in its everyday unit: {@code 26.0 °C}, {@code 2300 kPa}. */
  public static String reading(Channel channel, double si) {
    Unit unit = channel.storedUnit();
    double value = unit.fromSi(si);
    return fixed(value, Math.abs(value) < 1000 ? 1 : 0) + Numeral.after(everyday(unit.code()));
  }

  /** A unit code as a person reads it. */
  public static String everyday(String text) {
    return text.replace("Cel", "°C").replace("kW.h", "kWh");
  }

  /** With a minus sign: a hyphen is easily overlooked, and a line may end after it. */
  private static String fixed(double value, int decimals) {
    if (Math.abs(value) >= Numeral.LONGEST) {
      return Numeral.of(value, SHORT).replace('-', '−');
    }
    String text = String.format(Locale.ROOT, "%." + decimals + "f", value);
    boolean negativeZero = text.startsWith("-") && Double.parseDouble(text) == 0;
    return negativeZero ? text.substring(1) : text.replace('-', '−');
  }
}
