package heatwake.dashboard.present;

import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Puts the figures of a sentence of the analysis into US customary units. The analysis writes all
 * its figures alike ({@link heatwake.analysis.rule.Wording}): a number, perhaps an uncertainty,
 * perhaps a second number after "to", then one unit for all of them.
 */
final class UsSentence {
  private static final String NUMBER = "[−+]?\\d+(?:\\.\\d+)?";
  private static final String FIGURE = NUMBER + "(?: ± \\d+(?:\\.\\d+)?)?";

  /** Not within a word or a longer number before, and no longer unit behind. */
  private static final Pattern FIGURES =
      Pattern.compile(
          "(?<![\\w.,/−+-])("
              + FIGURE
              + "(?: to "
              + FIGURE
              + ")?) (°C|K|L/min|MPa|kPa|bar|m³|m²|m/s)(?![\\w²³])");

  private static final Pattern ONE = Pattern.compile("(± )?(" + NUMBER + ")");

  private static final Map<String, Translation> TRANSLATIONS =
      Map.of(
          "°C", to("Cel", Quantity.TEMPERATURE, "[degF]", 0),
          "K", to("K", Quantity.TEMPERATURE_DIFFERENCE, "[degF]", 0),
          "L/min", to("L/min", Quantity.FLOW, "[gal_us]/min", 1),
          "MPa", to("MPa", Quantity.PRESSURE, "[psi]", -2),
          "kPa", to("kPa", Quantity.PRESSURE, "[psi]", 1),
          "bar", to("bar", Quantity.PRESSURE, "[psi]", -1),
          "m³", to("m3", Quantity.VOLUME, "[gal_us]", -2),
          "m²", to("m2", Quantity.AREA, "[sft_i]", -1),
          "m/s", to("m/s", Quantity.SPEED, "[mi_i]/h", 0));

  private UsSentence() {}

  /**
   * A unit and the one it becomes.
   *
   * @param moreDecimals digits after the point that the new number needs more than the old one, to
   *     be about as fine
   */
  private record Translation(Unit from, Unit to, int moreDecimals) {
    String of(String figures) {
      String numbers = ONE.matcher(figures).replaceAll(this::number);
      return numbers + " " + Figure.symbol(to);
    }

    private String number(MatchResult number) {
      String text = number.group(2);
      double value = Double.parseDouble(text.replace('−', '-').replace("+", ""));
      int point = text.indexOf('.');
      int decimals = Math.max(0, (point < 0 ? 0 : text.length() - point - 1) + moreDecimals);
      boolean isUncertainty = number.group(1) != null;
      // An uncertainty is a length on the scale and knows nothing of where the scale begins.
      double other = isUncertainty ? value * from.factor() / to.factor() : from.to(to, value);
      String sign = text.startsWith("+") ? "+" : "";
      return (isUncertainty ? "± " : "") + sign + Figure.fixed(other, decimals);
    }
  }

  private static Translation to(String from, Quantity quantity, String to, int moreDecimals) {
    return new Translation(Unit.of(quantity, from), Unit.of(quantity, to), moreDecimals);
  }

  /** The sentence with its figures in US customary units; what has no such unit stays. */
  static String of(String metric) {
    return FIGURES
        .matcher(metric)
        .replaceAll(
            found -> Matcher.quoteReplacement(TRANSLATIONS.get(found.group(2)).of(found.group(1))));
  }
}
