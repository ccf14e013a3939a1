package heatwake.analysis.duty;

import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the heater draws over a steady span, alone and against its nameplate.
 *
 * @param besideW what else is on its meter, W
 */
record PowerDuty(OptionalDouble besideW) {
  /** Less than this part of the expected power is a fan, not a compressor; ours. */
  private static final double FAN_RATIO = 0.15;

  /** Nor is one a compressor that draws less than this part and heats less than the other; ours. */
  private static final double IDLE_POWER_RATIO = 0.35;

  private static final double IDLE_HEAT_RATIO = 0.1;

  /** No heater condenses closer than this above its entering water, K; ours. */
  private static final double LEAST_HEAD_K = 5;

  /** Power of a compressor by its condensing temperature: 2 to 3 % a kelvin; common practice. */
  private static final double POWER_PER_HEAD_K = 0.03;

  /** Puts power and its share of the nameplate's among a span's figures. */
  void read(SteadySpan span, Map<DutyFigure, Estimate> figures) {
    alone(span).ifPresent(power -> figures.put(DutyFigure.POWER, power));
    if (span.powerW().isPresent() && span.expectedPowerW().isPresent()) {
      figures.put(DutyFigure.POWER_RATIO, alone(span).get().dividedBy(span.expectedPowerW().get()));
    }
  }

  /** Puts the COP's share of the nameplate's among them. */
  void readCop(SteadySpan span, Map<DutyFigure, Estimate> figures) {
    if (span.cop().isPresent()
        && span.expectedHeatW().isPresent()
        && span.expectedPowerW().isPresent()) {
      Estimate expected = span.expectedHeatW().get().dividedBy(span.expectedPowerW().get());
      double share = alone(span).orElseThrow().value() / span.powerW().get().value();
      figures.put(DutyFigure.COP_RATIO, span.cop().get().times(1 / share).dividedBy(expected));
    }
  }

  /** Of the heater alone: without what else is on its meter. */
  private Optional<Estimate> alone(SteadySpan span) {
    return span.powerW()
        .map(power -> new Estimate(power.value() - besideW.orElse(0), power.standard()));
  }

  /** Puts among figures that tell of the condenser the power that it does not explain. */
  static void putUnexplained(Map<DutyFigure, Estimate> figures) {
    Estimate power = figures.get(DutyFigure.POWER_RATIO);
    Estimate approach = figures.get(DutyFigure.CONDENSER_APPROACH);
    if (power != null && approach != null) {
      double riseK =
          Optional.ofNullable(figures.get(DutyFigure.RISE))
              .map(Estimate::value)
              .orElse(LEAST_HEAD_K / 2);
      double headK = Math.max(0, approach.value() + riseK - LEAST_HEAD_K);
      figures.put(
          DutyFigure.UNEXPLAINED_POWER_RATIO,
          new Estimate(
              power.value() - POWER_PER_HEAD_K * headK,
              Math.hypot(power.standard(), POWER_PER_HEAD_K * approach.standard())));
    }
  }

  /**
   * Whether the discharge line is hotter than the high side condenses, beyond doubt: only a
   * compressor makes gas so hot (a sound one by 12 to 45 K: common practice).
   */
  private static boolean compresses(Duty duty) {
    return duty.of(DutyFigure.DISCHARGE_SUPERHEAT)
        .filter(superheat -> Doubt.above(superheat, Symptom.DISCHARGE.normalFrom()))
        .isPresent();
  }

  /**
   * Whether a duty is that of a fan alone.
   *
   * @param beyondFanW what no fan of such a heater draws, W
   */
  static boolean isFans(Duty duty, double beyondFanW) {
    double power = duty.of(DutyFigure.POWER_RATIO).map(Estimate::value).orElse(Double.NaN);
    double heat = duty.of(DutyFigure.HEAT_RATIO).map(Estimate::value).orElse(Double.NaN);
    boolean mayBe =
        duty.of(DutyFigure.POWER).map(Estimate::value).filter(w -> w > beyondFanW).isEmpty();
    return power < FAN_RATIO
        || (power < IDLE_POWER_RATIO && heat < IDLE_HEAT_RATIO && mayBe && !compresses(duty));
  }
}
