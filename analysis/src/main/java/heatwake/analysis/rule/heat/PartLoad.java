package heatwake.analysis.rule.heat;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Starvation;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Tells a variable-speed heater that runs slower by choice from one that fails. A slower compressor
 * takes less power in at least the proportion of its heat, so the COP holds or rises. The best
 * witness is the heater itself at full speed, in the same run; a heater that was never seen faster
 * is taken to run slower by choice only near the set temperature, where it has reason to. One whose
 * COP is no less than the promised one runs slower whatever else: what fails takes more of the heat
 * than of the power. A valve holds its superheat at any speed: one that does not is no choice. Nor
 * is work that is badly spent: a compressor that runs slower by choice spends it no worse.
 */
public final class PartLoad {
  /** Power below this share of the expected power may be part speed; ours. */
  private static final double POWER_RATIO = 0.95;

  /** A COP at least this share of the expected one, or of that at full speed, holds; ours. */
  public static final double COP_HOLDS = 0.94;

  /** A heater that gave at least this share of the expected heat lacks nothing; ours. */
  private static final double WHOLE_HEAT = 0.95;

  /** Full speed takes at least this much more power than part speed; ours. */
  private static final double FASTER = 1.08;

  /** Stretches within this share of the greatest power were at full speed; ours. */
  private static final double FULL_SPEED = 0.96;

  /** Heaters slow down when the water is this close to the set temperature, K; ours. */
  private static final double NEAR_SETPOINT_K = 1.5;

  /** Down to this share of the power a slower compressor gains little in COP; ours. */
  private static final double LITTLE_SLOWER = 0.75;

  private final Evidence evidence;
  private final CompressorWork work;

  PartLoad(Evidence evidence, CompressorWork work) {
    this.evidence = evidence;
    this.work = work;
  }

  /** That of a run. */
  public static PartLoad in(Evidence evidence) {
    return new PartLoad(evidence, CompressorWork.in(evidence));
  }

  /** Whether it can run slower: unless the rig says that its speed is fixed. */
  public boolean isPossible() {
    return !evidence.recording().rig().heater().isFixedSpeed();
  }

  /** Whether part speed explains low heat over a stretch, or cannot be ruled out. */
  public boolean explains(Duty duty) {
    if (!isPossible() || Starvation.isCertain(duty) || (work.isWasted(duty) && !gaveItsHeat())) {
      return false;
    }
    Optional<Estimate> power = duty.of(DutyFigure.POWER_RATIO);
    Optional<Estimate> cop = duty.of(DutyFigure.COP_RATIO);
    if (power.isEmpty() || cop.isEmpty()) {
      return evidence.recording().rig().pool().setpointK().isPresent()
          && duty.has(DutyFigure.WATER_IN)
          && isNearSetpoint(duty);
    }
    if (isByCop(duty)
        || isLittleSlower(duty)
        || isSlowerByItsGauges(duty)
        || isMuchSlowerByAnAssumedFlow(duty)) {
      return true;
    }
    Optional<Duty> full = atFullSpeed(power.get().value());
    if (full.isPresent()) {
      return holds(cop.get(), full.get())
          || (ConstantLoad.hidesPartSpeed(full.get(), duty, COP_HOLDS) && isNearSetpoint(duty));
    }
    return power.get().value() < POWER_RATIO
        && cop.get().value() > COP_HOLDS
        && isNearSetpoint(duty);
  }

  /**
   * Whether some stretch of the run has the heat: a compressor that wastes its work by its motor
   * may still slow down by choice, one that has lost heat never gives it.
   */
  private boolean gaveItsHeat() {
    return evidence.duty().stream()
        .flatMap(duty -> duty.of(DutyFigure.HEAT_RATIO).stream())
        .anyMatch(heat -> heat.value() >= LowHeat.MATERIAL_RATIO);
  }

  /**
   * Whether power and COP alone show that the compressor runs slower: less power than expected at
   * no less than the promised COP. One of fixed speed never does.
   */
  public boolean isByCop(Duty duty) {
    return isPossible()
        && duty.of(DutyFigure.POWER_RATIO).filter(one -> one.value() < POWER_RATIO).isPresent()
        && duty.of(DutyFigure.COP_RATIO).filter(one -> one.value() >= 1).isPresent();
  }

  /**
   * Whether the same heater gave its heat at more power in the same run, and its COP holds: what it
   * gives less of since, it gives by choice.
   */
  public boolean isSlowedFromWholeHeat(Duty duty) {
    Optional<Estimate> power = duty.of(DutyFigure.POWER_RATIO);
    Optional<Estimate> cop = duty.of(DutyFigure.COP_RATIO);
    if (!isPossible() || power.isEmpty() || cop.isEmpty()) {
      return false;
    }
    return atFullSpeed(power.get().value())
        .filter(full -> full.has(DutyFigure.HEAT_RATIO))
        .filter(full -> full.of(DutyFigure.HEAT_RATIO).orElseThrow().value() >= WHOLE_HEAT)
        .filter(full -> holds(cop.get(), full))
        .isPresent();
  }

  private static boolean holds(Estimate cop, Duty full) {
    return cop.value() > COP_HOLDS * full.of(DutyFigure.COP_RATIO).orElseThrow().value();
  }

  /**
   * Whether a compressor that runs a little slower is as likely as one that fails: so near full
   * speed its COP gains less than a plate is tolerated to be off, and what fails takes more of the
   * heat than of the power. Only over a coil that lies no further below the air than it should.
   */
  private static boolean isLittleSlower(Duty duty) {
    return duty.of(DutyFigure.POWER_RATIO).filter(one -> one.value() > LITTLE_SLOWER).isPresent()
        && holdsOverASoundCoil(duty);
  }

  /**
   * Whether a compressor that may run far slower is as likely as one that fails, its COP being the
   * promised one within the uncertainty: over a sound coil, and by the gauges its work is well
   * spent. What fails spends it badly.
   */
  private boolean isSlowerByItsGauges(Duty duty) {
    return duty.of(DutyFigure.COP_RATIO)
            .filter(cop -> cop.value() + cop.expanded() >= 1)
            .isPresent()
        && holdsOverASoundCoil(duty)
        && work.isWellSpent(duty);
  }

  /** Whether heat and power are lower alike, over a coil that has its air and its refrigerant. */
  private static boolean holdsOverASoundCoil(Duty duty) {
    return duty.of(DutyFigure.POWER_RATIO).filter(one -> one.value() < POWER_RATIO).isPresent()
        && !Starvation.shows(duty)
        && duty.of(DutyFigure.COP_RATIO).filter(cop -> cop.value() > COP_HOLDS).isPresent()
        && duty.of(DutyFigure.STANDARD_APPROACH)
            .filter(approach -> approach.value() < Symptom.EVAPORATING.normalTo())
            .isPresent();
  }

  /**
   * Whether the power is that of a slow compressor, and the COP, for want of a flow meter, may be
   * what that brings: a heat of which only the most is known proves no failing compressor.
   */
  private boolean isMuchSlowerByAnAssumedFlow(Duty duty) {
    Estimate cop = duty.of(DutyFigure.COP_RATIO).orElseThrow();
    return evidence.heat().flowIsAssumed()
        && duty.of(DutyFigure.POWER_RATIO).orElseThrow().value() <= LITTLE_SLOWER
        && cop.value() + cop.expanded() >= 1;
  }

  /**
   * Whether a stretch was at part speed for certain enough to say so: it draws less than the
   * nameplate's power beyond doubt. What merely cannot be ruled out is no proof of health.
   */
  public boolean isShown(Duty duty) {
    return duty.has(DutyFigure.COP_RATIO)
        && duty.of(DutyFigure.POWER_RATIO).filter(power -> Doubt.below(power, 1)).isPresent()
        && explains(duty);
  }

  /**
   * Whether a run shows part speed alone, and not only while the water is known to be near the set
   * temperature, so that nothing is known to ask for it. A quiet or economy setting does that, and
   * a compressor that moves too little.
   */
  public boolean isUnasked() {
    List<Duty> known =
        evidence.duty().stream().filter(duty -> duty.has(DutyFigure.POWER_RATIO)).toList();
    return known.stream().allMatch(duty -> power(duty) < POWER_RATIO)
        && (evidence.recording().rig().pool().setpointK().isEmpty()
            || known.stream().anyMatch(duty -> !isNearSetpoint(duty)));
  }

  /** The same heater in the same run at clearly more power, if it was seen so. */
  private Optional<Duty> atFullSpeed(double powerRatio) {
    List<Duty> known =
        evidence.duty().stream()
            .filter(duty -> duty.has(DutyFigure.POWER_RATIO, DutyFigure.COP_RATIO))
            .toList();
    double greatest = known.stream().mapToDouble(PartLoad::power).max().orElse(0);
    List<Duty> full = known.stream().filter(duty -> power(duty) >= FULL_SPEED * greatest).toList();
    return greatest < FASTER * powerRatio || full.isEmpty()
        ? Optional.empty()
        : Optional.of(Duty.meanOf(full));
  }

  private static double power(Duty duty) {
    return duty.of(DutyFigure.POWER_RATIO).orElseThrow().value();
  }

  /** Whether the water is near the set temperature, or how near is not known. */
  private boolean isNearSetpoint(Duty duty) {
    OptionalDouble setpoint = evidence.recording().rig().pool().setpointK();
    Optional<Estimate> water = duty.of(DutyFigure.WATER_IN);
    return setpoint.isEmpty()
        || water.isEmpty()
        || water.get().value() > setpoint.getAsDouble() - NEAR_SETPOINT_K;
  }
}
