package heatwake.dashboard.present;

import heatwake.analysis.finding.BypassFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a person who turns the bypass valve needs to see.
 *
 * @param share part of the flow that goes through the heater, in words; a dash where not known
 * @param rise rise through the heater, with uncertainty; a dash where not known
 * @param range where the rise belongs, in words
 * @param advice what to do
 * @param tone how it stands
 * @param scale the same as a scale to draw; empty without a range
 */
public record BypassAdvice(
    String share, String rise, String range, String advice, Tone tone, Optional<Scale> scale) {

  /**
   * The rise on its scale, in the unit shown.
   *
   * @param least rise at the nameplate's greatest flow
   * @param greatest rise at the nameplate's least flow
   * @param rise the rise as it is; NaN where not known
   * @param uncertainty its expanded uncertainty
   * @param unit symbol of the unit
   */
  public record Scale(
      double least, double greatest, double rise, double uncertainty, String unit) {}

  /** Short, so that a hand on the valve sees what it does; long enough to calm the noise; ours. */
  static final long SHARE_MEAN_MS = 15_000;

  /**
   * Advice from the last moment the compressor ran, with the share as it is now; empty if the
   * heater was not seen running.
   *
   * @param nowMs the present moment on the clock of the readings
   */
  public static Optional<BypassAdvice> of(Findings findings, long nowMs, UnitChoice units) {
    OptionalDouble shareNow =
        RecentMean.of(findings, Trace.Kind.HEATER_SHARE, nowMs, SHARE_MEAN_MS);
    return findings.bypass().map(figures -> of(figures, shareNow, units));
  }

  private static BypassAdvice of(BypassFigures figures, OptionalDouble shareNow, UnitChoice units) {
    DisplayUnit kelvin = units.of(Quantity.TEMPERATURE_DIFFERENCE);
    DisplayUnit percent = units.of(Quantity.RATIO);
    String share =
        shareNow.isPresent()
            ? percent.text(shareNow.getAsDouble())
            : figures.heaterShare().map(percent::text).orElse(Tile.NONE);
    String rise = figures.riseK().map(kelvin::text).orElse(Tile.NONE);
    if (figures.riseAtFlowMaxK().isEmpty() || figures.riseAtFlowMinK().isEmpty()) {
      return new BypassAdvice(
          share,
          rise,
          "",
          "Where the rise belongs needs nameplate flows and rating points in the rig, and an air"
              + " probe.",
          Tone.STALE,
          Optional.empty());
    }
    Estimate least = figures.riseAtFlowMaxK().get();
    Estimate greatest = figures.riseAtFlowMinK().get();
    String range = kelvin.number(least.value()) + " to " + kelvin.text(greatest.value());
    Scale scale =
        new Scale(
            least.value() / kelvin.unit().factor(),
            greatest.value() / kelvin.unit().factor(),
            figures.riseK().map(Estimate::value).orElse(Double.NaN) / kelvin.unit().factor(),
            figures.riseK().map(Estimate::expanded).orElse(0.0) / kelvin.unit().factor(),
            kelvin.symbol());
    Stand stand = figures.riseK().map(one -> stand(one, least, greatest)).orElse(Stand.UNKNOWN);
    return new BypassAdvice(share, rise, range, stand.advice, stand.tone, Optional.of(scale));
  }

  private enum Stand {
    TOO_MUCH_WATER(
        "Rise too small: more water than the nameplate allows. Turn the bypass a little past the"
            + " heater and wait for the rise to settle.",
        Tone.WARNING),
    TOO_LITTLE_WATER(
        "Rise too great: too little water, or less heat leaves with it than the nameplate promises."
            + " Turn the bypass a little towards the heater, look at strainer and filter, and wait for"
            + " the rise to settle.",
        Tone.WARNING),
    NEAR_AN_END(
        "Rise at the edge of the range: nearer than its uncertainty can tell. Move the bypass a"
            + " little towards the middle.",
        Tone.PLAIN),
    WITHIN("Rise within the range: the heater has its nameplate flow.", Tone.GOOD),
    UNKNOWN("The rise is not known: clip water-in and water-out.", Tone.STALE);

    private final String advice;
    private final Tone tone;

    Stand(String advice, Tone tone) {
      this.advice = advice;
      this.tone = tone;
    }
  }

  /** Compared with the expanded uncertainty of the difference (k = 2). */
  private static Stand stand(Estimate rise, Estimate least, Estimate greatest) {
    double belowLeast = least.value() - rise.value();
    double aboveGreatest = rise.value() - greatest.value();
    double slackLeast = Math.hypot(rise.expanded(), least.expanded());
    double slackGreatest = Math.hypot(rise.expanded(), greatest.expanded());
    if (belowLeast > slackLeast) {
      return Stand.TOO_MUCH_WATER;
    }
    if (aboveGreatest > slackGreatest) {
      return Stand.TOO_LITTLE_WATER;
    }
    boolean clearlyWithin = -belowLeast > slackLeast && -aboveGreatest > slackGreatest;
    return clearlyWithin ? Stand.WITHIN : Stand.NEAR_AN_END;
  }
}
