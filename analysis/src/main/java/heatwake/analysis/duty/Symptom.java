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
 * heat first, since an exchanger's approach goes with the heat it passes.
 */
public enum Symptom {
  /** Heat over expected heat. */
  HEAT("heat against the nameplate", 0.95, 1.10, 0.12, 0.15),
  /** COP over expected COP. */
  COP("COP against the nameplate", 0.94, 1.12, 0.12, 0.15),
  /** Power over expected power. */
  POWER("power against the nameplate", 0.96, 1.05, 0.10, 0.10),
  /** Flow over the least flow of the nameplate. */
  FLOW("water flow against the nameplate's least", 1.0, 3.5, 0.15, 1.0),
  /** Condensing temperature above leaving water, K at full load. */
  CONDENSING("condensing temperature above leaving water", 2.5, 10.5, 1.5, 4),
  /** Entering air above evaporating temperature, K at full load. */
  EVAPORATING("entering air above evaporating temperature", 7, 16, 3, 5),
  /** Suction superheat, K. */
  SUPERHEAT("superheat", 2, 10, 2, 6),
  /** Liquid subcooling, K. */
  SUBCOOLING("subcooling", 2, 9, 2, 4),
  /** Discharge line above condensing temperature, K. */
  DISCHARGE("discharge line above condensing temperature", 12, 40, 8, 15),
  /** Part of the way to the evaporating temperature that the air is cooled. */
  AIR_DROP("cooling of the air against its approach", 0.25, 0.65, 0.12, 0.15);

  /** Below this load an approach no longer shrinks in proportion (fan and pump may slow); ours. */
  private static final double LEAST_LOAD = 0.5;

  private static final double GREATEST_LOAD = 1.5;

  /** A humid coil passes more heat for its approach than a dry one: by up to this; ours. */
  private static final double DRY_COIL_EXTRA = 0.25;

  private static final double HUMID = 0.8;
  private static final double DRY = 0.2;

  /**
   * Rise at which a heater without stated least flow has too little water, K; see low-heater-flow.
   */
  private static final double GREATEST_RISE_K = 6;

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
      case FLOW -> flow(duty, heater);
      case CONDENSING ->
          duty.of(DutyFigure.CONDENSER_APPROACH).map(approach -> atFullLoad(approach, duty));
      case EVAPORATING ->
          duty.of(DutyFigure.EVAPORATOR_APPROACH)
              .map(approach -> atFullLoad(approach, duty).times(1 / dryness(duty)));
      case SUPERHEAT -> duty.of(DutyFigure.SUPERHEAT);
      case SUBCOOLING -> duty.of(DutyFigure.SUBCOOLING);
      case DISCHARGE -> duty.of(DutyFigure.DISCHARGE_SUPERHEAT);
      case AIR_DROP ->
          duty.has(DutyFigure.AIR_DROP, DutyFigure.EVAPORATOR_APPROACH)
              ? Optional.of(
                  duty.of(DutyFigure.AIR_DROP)
                      .orElseThrow()
                      .dividedBy(duty.of(DutyFigure.EVAPORATOR_APPROACH).orElseThrow()))
              : Optional.empty();
    };
  }

  /** How far outside its band the figure lies; empty if the figure is not known. */
  public OptionalDouble grade(Duty duty, Heater heater) {
    Optional<Estimate> figure = figure(duty, heater);
    return figure.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(grade(figure.get()));
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

  /** How much greater the approach of a coil in this air is than in humid air. */
  public static double dryness(Duty duty) {
    double humidity = duty.of(DutyFigure.HUMIDITY).map(Estimate::value).orElse(DRY);
    double dry = Math.max(0, Math.min(1, (HUMID - humidity) / (HUMID - DRY)));
    return 1 + DRY_COIL_EXTRA * dry;
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
