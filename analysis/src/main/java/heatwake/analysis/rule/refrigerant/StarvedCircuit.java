package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.rule.Corroboration;
import heatwake.analysis.rule.Flooding;
import heatwake.analysis.rule.HotSuction;
import heatwake.analysis.rule.IcedCoil;
import heatwake.analysis.rule.LittleAir;
import heatwake.analysis.rule.Starvation;
import heatwake.analysis.rule.heat.PartLoad;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a circuit that lacks refrigerant shows in steady running: hot suction gas, vapour before the
 * expansion valve, a coil far below the air, and less heat. One of them alone proves nothing.
 */
final class StarvedCircuit {
  /** Superheat above this is high: valves are set to 4 to 8 K; common practice. */
  private static final double HIGH_SUPERHEAT_K = 10;

  /** Superheat above this beside vapour in the liquid line needs no more; common practice. */
  private static final double GRAVE_SUPERHEAT_K = 12;

  /**
   * Superheat above this starves the coil whatever else is known. Behind a fixed orifice it varies
   * with air and water: charging tables ask for up to some 25 K in humid air where the condenser is
   * cool; common practice, from memory.
   */
  private static final double GREATEST_SUPERHEAT_K = 25;

  /**
   * The same in air of 20 Cel and less, whose wet bulb is no higher: the tables ask for some 15 K
   * there at the most; common practice, from memory.
   */
  private static final double GREATEST_IN_COOL_AIR_K = 18;

  private static final double COOL_AIR_K = 273.15 + 20;

  /**
   * In air of this and less, whose wet bulb is no higher, the tables ask for some 11 K at the most,
   * and for 5 K where the condenser's medium is at 25 Cel: there no sound heater has a grave
   * superheat; common practice, from memory.
   */
  private static final double COLD_AIR_K = 273.15 + 15;

  /**
   * Subcooling below this leaves vapour in the liquid line; 4 to 8 K is normal, common practice.
   */
  private static final double LOW_SUBCOOLING_K = 2;

  /** Less subcooling than this is little beside a superheat that is high; common practice. */
  private static final double LEAST_USUAL_SUBCOOLING_K = 4;

  /** Evaporating this far below the air, at the rated heat in humid air, is low, K. */
  private static final double LOW_EVAPORATING_K = 13;

  /** Evaporating closer than this to the air, as a worn compressor leaves it, is not low, K. */
  private static final double HIGH_EVAPORATING_K = 9;

  /** Heat or COP below this share of the nameplate's may be a loss; ours. */
  private static final double SOME_LOSS = 0.95;

  private final PartLoad partLoad;
  private final Duty duty;
  private final Optional<Estimate> superheat;
  private final boolean evaporatesLow;
  private final boolean vapourInLiquid;

  /**
   * Looks at one stretch.
   *
   * @param partLoad that of the run
   * @param duty the stretch
   */
  StarvedCircuit(PartLoad partLoad, Duty duty) {
    this.partLoad = partLoad;
    this.duty = duty;
    this.superheat = duty.of(DutyFigure.SUPERHEAT);
    this.evaporatesLow =
        isAbove(duty.of(DutyFigure.STANDARD_APPROACH), LOW_EVAPORATING_K)
            && !LittleAir.isLikely(duty);
    this.vapourInLiquid = hasSubcoolingUnder(LOW_SUBCOOLING_K);
  }

  /** Whether the circuit lacks refrigerant, by any of the ways that leave no other cause. */
  boolean shows() {
    if (Starvation.isContradictedByCondenser(duty)
        || HotSuction.shows(duty)
        || isBelow(duty.of(DutyFigure.STANDARD_APPROACH), HIGH_EVAPORATING_K)) {
      return false;
    }
    return (Corroboration.isImpossible(duty) && showsByCircuitAlone())
        || showsByCoilAndLittleLiquid()
        || showsByEmptyLiquidLine()
        || showsByAllThree()
        || (isGraveOverLowCoil() && Corroboration.ofLossBesideFarOut(duty))
        || showsByLostHeat();
  }

  /** Where heat and COP cannot bear it out, the circuit has to say so twice, and plainly. */
  private boolean showsByCircuitAlone() {
    return (surely(superheat, GRAVE_SUPERHEAT_K)
            && (vapourInLiquid || (evaporatesLow && hasLittleSubcooling())))
        || (surely(superheat, greatestSuperheatK()) && evaporatesLow)
        || (isGraveOverLowCoil() && isBelow(duty.of(DutyFigure.AIR), COLD_AIR_K));
  }

  /**
   * A valve holds its superheat over a dirty coil too, and a clip that hangs in the air reads the
   * air.
   */
  private boolean isGraveOverLowCoil() {
    return surely(superheat, GRAVE_SUPERHEAT_K) && evaporatesLow && SuctionClip.isOnItsLine(duty);
  }

  private double greatestSuperheatK() {
    return isBelow(duty.of(DutyFigure.AIR), COOL_AIR_K)
        ? GREATEST_IN_COOL_AIR_K
        : GREATEST_SUPERHEAT_K;
  }

  private boolean showsByCoilAndLittleLiquid() {
    return surely(superheat, HIGH_SUPERHEAT_K)
        && hasLittleSubcooling()
        && evaporatesLow
        && mayHaveLostHeat();
  }

  /** A dirty coil empties no liquid line, a worn compressor starves no coil. */
  private boolean showsByEmptyLiquidLine() {
    return vapourInLiquid
        && ((surely(superheat, HIGH_SUPERHEAT_K) && mayHaveLostHeat())
            || (likely(superheat, HIGH_SUPERHEAT_K) && Corroboration.ofLostHeat(duty)));
  }

  /** Each of the three may be the heater's own way; all of them together are a want of charge. */
  private boolean showsByAllThree() {
    return surely(superheat, HIGH_SUPERHEAT_K)
        && vapourInLiquid
        && evaporatesLow
        && !givesMoreThanPromised();
  }

  /**
   * Beside lost heat less will do. A slower compressor leaves less liquid before the valve too;
   * want of refrigerant costs more of the heat than of the power.
   */
  private boolean showsByLostHeat() {
    return Corroboration.ofLostHeat(duty)
        && ((surely(superheat, HIGH_SUPERHEAT_K) && !isWellFed())
            || (vapourInLiquid
                && evaporatesLow
                && !hasItsHeat()
                && !Flooding.shows(duty)
                && !Starvation.mayBeForWantOfAir(duty)
                && !IcedCoil.mayBe(duty)
                && !partLoad.isByCop(duty)
                && !partLoad.isSlowedFromWholeHeat(duty)));
  }

  /**
   * Liquid before the valve and a coil that is not drawn down: superheat is then not for want of
   * refrigerant, as with a compressor that moves too little.
   */
  private boolean isWellFed() {
    return isAbove(duty.of(DutyFigure.SUBCOOLING), LEAST_USUAL_SUBCOOLING_K)
        && isBelow(duty.of(DutyFigure.STANDARD_APPROACH), LOW_EVAPORATING_K);
  }

  /** Whether heat is above the nameplate's by more than its uncertainty. */
  private boolean givesMoreThanPromised() {
    return duty.of(DutyFigure.HEAT_RATIO)
        .filter(heat -> heat.value() - 2 * heat.standard() > 1)
        .isPresent();
  }

  private boolean hasLittleSubcooling() {
    return hasSubcoolingUnder(LEAST_USUAL_SUBCOOLING_K);
  }

  /** Want of refrigerant costs heat: where that is there, a low COP has another cause. */
  private boolean hasItsHeat() {
    return duty.of(DutyFigure.HEAT_RATIO).filter(heat -> heat.value() >= SOME_LOSS).isPresent();
  }

  /** Whether heat and COP leave room for a loss, however wide their uncertainty. */
  private boolean mayHaveLostHeat() {
    return Stream.of(DutyFigure.HEAT_RATIO, DutyFigure.COP_RATIO)
        .flatMap(figure -> duty.of(figure).stream())
        .anyMatch(ratio -> ratio.value() < SOME_LOSS);
  }

  private static boolean surely(Optional<Estimate> figure, double limit) {
    return figure.filter(known -> Doubt.above(known, limit)).isPresent();
  }

  private static boolean likely(Optional<Estimate> figure, double limit) {
    return figure.filter(known -> known.value() - known.standard() > limit).isPresent();
  }

  private static boolean isAbove(Optional<Estimate> figure, double limit) {
    return figure.filter(known -> known.value() > limit).isPresent();
  }

  private static boolean isBelow(Optional<Estimate> figure, double limit) {
    return figure.filter(known -> known.value() < limit).isPresent();
  }

  private boolean hasSubcoolingUnder(double limit) {
    return duty.of(DutyFigure.SUBCOOLING)
        .filter(known -> known.value() + 2 * known.standard() < limit)
        .isPresent();
  }
}
