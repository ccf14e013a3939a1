package heatwake.dashboard.present;

import heatwake.analysis.finding.BypassFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a person who turns the bypass valve needs to see. Where meters tell the flow through the
 * heater it is held against the nameplate's range; where none does, the rise is.
 *
 * @param share part of the total flow that goes through the heater, in words; a dash where not
 *     known
 * @param flow water through the heater, with uncertainty; empty where no meter tells it
 * @param rise rise through the heater, with uncertainty; a dash where not known
 * @param range where flow or rise belongs; empty where that is not known
 * @param advice what to do
 * @param tone how it stands
 * @param scale the same as a scale to draw; empty without both ends of the range
 */
public record BypassAdvice(
    String share,
    Optional<String> flow,
    String rise,
    Optional<Range> range,
    String advice,
    Tone tone,
    Optional<Scale> scale) {

  /**
   * Where a figure belongs, in words.
   *
   * @param name for a table
   * @param value from where to where, with unit
   * @param sentence the same for reading on its own
   */
  public record Range(String name, String value, String sentence) {}

  /**
   * Flow or rise on its scale, in the unit shown.
   *
   * @param least lower end of the range where it belongs
   * @param greatest upper end
   * @param value as it is; NaN where not known
   * @param uncertainty its expanded uncertainty
   * @param below what lies below the range, in words
   * @param above what lies above it
   */
  public record Scale(
      double least,
      double greatest,
      double value,
      double uncertainty,
      String below,
      String above) {}

  private static final String MORE_WATER = "more water";
  private static final String LESS_WATER = "less water";

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
    return findings.bypass().map(figures -> of(figures, findings, shareNow, units));
  }

  private static BypassAdvice of(
      BypassFigures figures, Findings findings, OptionalDouble shareNow, UnitChoice units) {
    DisplayUnit percent = units.of(Quantity.RATIO);
    DisplayUnit flow = units.of(Quantity.FLOW);
    DisplayUnit kelvin = units.of(Quantity.TEMPERATURE_DIFFERENCE);
    boolean byFlow = figures.flowM3PerS().isPresent();
    Optional<Range> range = byFlow ? flowRange(figures, flow) : riseRange(figures, kelvin);
    Optional<Scale> scale = byFlow ? flowScale(figures, flow) : riseScale(figures, kelvin);
    Counsel counsel =
        range.isEmpty()
            ? rangeUnknown(byFlow)
            : byFlow ? BypassByFlow.of(figures, flow) : BypassByRise.of(figures, findings, units);
    return new BypassAdvice(
        shareNow.isPresent()
            ? percent.text(shareNow.getAsDouble())
            : figures.heaterShare().map(percent::text).orElse(Tile.NONE),
        figures.flowM3PerS().map(flow::text),
        figures.riseK().map(kelvin::text).orElse(Tile.NONE),
        range,
        counsel.words(),
        counsel.tone(),
        scale);
  }

  private static Counsel rangeUnknown(boolean byFlow) {
    return new Counsel(
        byFlow
            ? "Where the flow belongs needs the nameplate's flow-min and flow-max in the rig."
            : "Where the rise belongs needs nameplate flows and rating points in the rig, and an air"
                + " probe.",
        Tone.STALE);
  }

  private static Optional<Range> flowRange(BypassFigures figures, DisplayUnit unit) {
    OptionalDouble least = figures.flowMinM3PerS();
    OptionalDouble greatest = figures.flowMaxM3PerS();
    if (least.isEmpty() && greatest.isEmpty()) {
      return Optional.empty();
    }
    String value =
        greatest.isEmpty()
            ? "at least " + unit.text(least.getAsDouble())
            : least.isEmpty()
                ? "at most " + unit.text(greatest.getAsDouble())
                : unit.number(least.getAsDouble()) + " to " + unit.text(greatest.getAsDouble());
    return Optional.of(
        new Range(
            "Nameplate flow", value, "The nameplate asks for " + value + " through the heater."));
  }

  private static Optional<Range> riseRange(BypassFigures figures, DisplayUnit unit) {
    if (figures.riseAtFlowMaxK().isEmpty() || figures.riseAtFlowMinK().isEmpty()) {
      return Optional.empty();
    }
    String value =
        unit.number(figures.riseAtFlowMaxK().get().value())
            + " to "
            + unit.text(figures.riseAtFlowMinK().get().value());
    return Optional.of(
        new Range(
            "Rise at nameplate flow",
            value,
            "At today's expected heat, " + value + " means nameplate flow."));
  }

  private static Optional<Scale> flowScale(BypassFigures figures, DisplayUnit unit) {
    if (figures.flowMinM3PerS().isEmpty() || figures.flowMaxM3PerS().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        scale(
            figures.flowMinM3PerS().getAsDouble(),
            figures.flowMaxM3PerS().getAsDouble(),
            figures.flowM3PerS(),
            unit,
            LESS_WATER,
            MORE_WATER));
  }

  private static Optional<Scale> riseScale(BypassFigures figures, DisplayUnit unit) {
    return figures
        .riseAtFlowMaxK()
        .flatMap(
            least ->
                figures
                    .riseAtFlowMinK()
                    .map(
                        greatest ->
                            scale(
                                least.value(),
                                greatest.value(),
                                figures.riseK(),
                                unit,
                                MORE_WATER,
                                LESS_WATER)));
  }

  private static Scale scale(
      double least,
      double greatest,
      Optional<Estimate> figure,
      DisplayUnit unit,
      String below,
      String above) {
    double factor = unit.unit().factor();
    return new Scale(
        least / factor,
        greatest / factor,
        figure.map(Estimate::value).orElse(Double.NaN) / factor,
        figure.map(Estimate::expanded).orElse(0.0) / factor,
        below,
        above);
  }
}
