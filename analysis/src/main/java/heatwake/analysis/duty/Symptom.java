package heatwake.analysis.duty;

import heatwake.analysis.site.Heater;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A figure of the running heater seen against the band in which it lies on sound heaters. Its grade
 * runs from -1 (far below) over 0 (within the band, or not beyond it by its own uncertainty) to 1
 * (far above).
 *
 * <p>The bands are common practice, set wide because heaters differ; they are what a technician
 * would call normal, not what any one heater does. Approaches are brought to the greatest rated
 * heat first, since an exchanger's approach goes with the heat it passes; the coil's also to
 * standard air.
 */
public enum Symptom {
  /** Heat over expected heat. */
  HEAT("heat against the nameplate", 0.95, 1.10, 0.12, 0.15),
  /** COP over expected COP. */
  COP("COP against the nameplate", 0.94, 1.12, 0.12, 0.15),
  /** Power over expected power. */
  POWER("power against the nameplate", 0.96, 1.05, 0.10, 0.10),
  /** Power over expected power that no head on the condenser explains. */
  UNEXPLAINED_POWER("power that the condensing temperature does not explain", 0, 1.08, 0.1, 0.1),
  /** Flow over the least flow of the nameplate. */
  FLOW("water flow against the nameplate's least", 1.0, 3.5, 0.15, 1.0),
  /** Condensing above leaving water, K at full load. */
  CONDENSING("condensing above leaving water, at full load", 2.5, 11, 1.5, 4),
  /** Entering air above evaporating, K at full load in standard air. */
  EVAPORATING("entering air above evaporating, at full load in humid air", 6, 17, 3, 6),
  /** Suction superheat, K. */
  SUPERHEAT("superheat", 2, 9, 2, 5),
  /** Liquid subcooling, K; above its band only as far as its share bears out. */
  SUBCOOLING("subcooling", 2, 7, 2, 4),
  /** Discharge line above condensing temperature, K. */
  DISCHARGE("discharge line above condensing temperature", 12, 45, 8, 15),
  /** Dry air through the coil, kg/s for each kW of rated heat. */
  AIR_FLOW("air through the coil for each kW of rated heat", 0.055, 0.15, 0.015, 0.05),
  /** Standing pressure as saturation temperature above the warmer of air and water, K. */
  STANDING("standing pressure above saturation at the warmest place", -40, 2.5, 10, 3);

  /** Below this load an approach no longer shrinks in proportion (pump may slow); ours. */
  private static final double LEAST_LOAD = 0.6;

  private static final double GREATEST_LOAD = 1.5;

  /**
   * Rise at which a heater without stated least flow has too little water, K; see low-heater-flow.
   */
  private static final double GREATEST_RISE_K = 6;

  private static final double W_PER_KW = 1000;

  private final String words;
  private final double normalFrom;
  private final double normalTo;
  private final double farBelow;
  private final double farAbove;

  Symptom(String words, double normalFrom, double normalTo, double farBelow, double farAbove) {
    this.words = words;
    this.normalFrom = normalFrom;
    this.normalTo = normalTo;
    this.farBelow = farBelow;
    this.farAbove = farAbove;
  }

  /** What it is, in plain words. */
  public String words() {
    return words;
  }

  /** Least value on sound heaters. */
  public double normalFrom() {
    return normalFrom;
  }

  /** Greatest value on sound heaters. */
  public double normalTo() {
    return normalTo;
  }

  /** The figure that is held against the band. */
  public Optional<Estimate> figure(Duty duty, Heater heater) {
    return switch (this) {
      case HEAT -> duty.of(DutyFigure.HEAT_RATIO);
      case COP -> duty.of(DutyFigure.COP_RATIO);
      case POWER -> duty.of(DutyFigure.POWER_RATIO);
      case UNEXPLAINED_POWER -> duty.of(DutyFigure.UNEXPLAINED_POWER_RATIO);
      case FLOW -> flow(duty, heater);
      case CONDENSING ->
          duty.of(DutyFigure.CONDENSER_APPROACH).map(approach -> atFullLoad(approach, duty));
      case EVAPORATING -> duty.of(DutyFigure.STANDARD_APPROACH);
      case SUPERHEAT -> duty.of(DutyFigure.SUPERHEAT);
      case SUBCOOLING -> duty.of(DutyFigure.SUBCOOLING);
      case DISCHARGE -> duty.of(DutyFigure.DISCHARGE_SUPERHEAT);
      case AIR_FLOW -> duty.of(DutyFigure.AIR_FLOW).map(flow -> flow.times(W_PER_KW));
      case STANDING -> duty.of(DutyFigure.STANDING_EXCESS);
    };
  }

  /** How far outside its band the figure lies; empty if the figure is not known. */
  public OptionalDouble grade(Duty duty, Heater heater) {
    Optional<Estimate> figure = figure(duty, heater);
    return figure.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(borneOut(grade(figure.get()), duty));
  }

  private double borneOut(double grade, Duty duty) {
    return this == SUBCOOLING && grade > 0 ? grade * LiquidEnd.bearsOutMuchLiquid(duty) : grade;
  }

  /** How far outside its band a figure lies, its standard uncertainty taken off first. */
  public double grade(Estimate figure) {
    double above = figure.value() - normalTo - figure.standard();
    double below = normalFrom - figure.value() - figure.standard();
    if (above > 0) {
      return Math.min(1, above / farAbove);
    }
    return below > 0 ? -Math.min(1, below / farBelow) : 0;
  }

  private static Estimate atFullLoad(Estimate approach, Duty duty) {
    Estimate load = duty.of(DutyFigure.LOAD).orElse(Estimate.exact(1));
    double bounded = Math.max(LEAST_LOAD, Math.min(GREATEST_LOAD, load.value()));
    return approach.dividedBy(new Estimate(bounded, load.standard()));
  }

  private static Optional<Estimate> flow(Duty duty, Heater heater) {
    if (heater.flowMinM3PerS().isPresent()) {
      return duty.of(DutyFigure.FLOW)
          .map(flow -> flow.times(1 / heater.flowMinM3PerS().getAsDouble()));
    }
    return duty.of(DutyFigure.RISE)
        .filter(rise -> rise.value() > 0)
        .map(rise -> Estimate.exact(GREATEST_RISE_K).dividedBy(rise));
  }
}
