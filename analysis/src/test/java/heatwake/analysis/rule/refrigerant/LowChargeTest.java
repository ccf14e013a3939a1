package heatwake.analysis.rule.refrigerant;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Side;
import heatwake.analysis.rule.airflow.EvaporatorApproach;
import heatwake.analysis.scenario.AtDuty;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.site.CompressorSpeed;
import org.junit.jupiter.api.Test;

class LowChargeTest {
  private final LowCharge rule = new LowCharge();

  private static AtDuty starved(double superheatK, double standardK) {
    return AtDuty.sound()
        .set(DutyFigure.SUPERHEAT, superheatK, standardK)
        .set(DutyFigure.SUBCOOLING, 1, 0.3)
        .set(DutyFigure.EVAPORATING, 273.15 + 3.5, 0.4)
        .set(DutyFigure.CONDENSING, 273.15 + 33.8, 0.4)
        .set(DutyFigure.CONDENSER_APPROACH, 5.8, 0.4)
        .set(DutyFigure.STANDARD_APPROACH, 24, 0.8)
        .set(DutyFigure.HEAT_RATIO, 0.74, 0.03)
        .set(DutyFigure.COP_RATIO, 0.84, 0.03);
  }

  @Test
  void saysSuperheatSubcoolingAndPressures() {
    var flag = onlyFlag(rule, starved(16, 0.5).evidence());
    assertThat(flag.evidence())
        .isEqualTo(
            "Superheat 16.0 K, subcooling 1.0 K, evaporating at 3.5 °C in air of 27.0 °C, condensing"
                + " at 33.8 °C; heat 74 ± 6 % of the nameplate's");
    assertThat(flag.side()).isEqualTo(Side.REFRIGERANT);
    assertThat(flag.causes().get(0)).startsWith("too little refrigerant");
    assertThat(flag.nextCheck()).contains("certified refrigerant handler");
  }

  @Test
  void isSilentOnASoundHeater() {
    assertClear(rule, AtDuty.sound().evidence());
  }

  @Test
  void isSilentAtTheLimitAndWithinItsUncertainty() {
    AtDuty valveHolds = starved(10, 0).set(DutyFigure.SUBCOOLING, 4, 0.3);
    assertClear(rule, valveHolds.evidence());
    assertClear(rule, valveHolds.set(DutyFigure.SUPERHEAT, 11.5, 0.51).evidence());
    onlyFlag(rule, valveHolds.set(DutyFigure.SUPERHEAT, 11.5, 0.49).evidence());
  }

  @Test
  void seesALostChargeBehindAnExpansionValve() {
    onlyFlag(rule, starved(6, 0.4).evidence());
    assertClear(rule, starved(6, 0.4).set(DutyFigure.STANDARD_APPROACH, 13, 0.8).evidence());
  }

  /**
   * Vapour before the valve and much superheat after the coil are one cause's, however low it is.
   */
  @Test
  void muchSuperheatAndNoLiquidNeedNoLowCoil() {
    AtDuty usualCoil = starved(11, 0.6).set(DutyFigure.STANDARD_APPROACH, 13, 0.8);
    onlyFlag(rule, usualCoil.evidence());
    // Heat in doubt asks for superheat beyond doubt.
    AtDuty doubtful =
        usualCoil
            .set(DutyFigure.HEAT_RATIO, 0.8, 0.09)
            .set(DutyFigure.COP_RATIO, 0.96, 0.1)
            .set(DutyFigure.POWER_RATIO, 0.8, 0.01);
    assertClear(rule, doubtful.evidence());
    onlyFlag(rule, doubtful.set(DutyFigure.SUPERHEAT, 13, 0.6).evidence());
    assertClear(rule, doubtful.set(DutyFigure.SUBCOOLING, 3.5, 0.3).evidence());
    assertClear(rule, doubtful.set(DutyFigure.HEAT_RATIO, 1, 0.09).evidence());
  }

  /** What costs COP and no heat is no want of refrigerant (physics: the heat is its flow's). */
  @Test
  void aLowCopBesideTheWholeHeatHasAnotherCause() {
    AtDuty wasteful = starved(7, 0.4).set(DutyFigure.COP_RATIO, 0.8, 0.03);
    assertClear(rule, wasteful.set(DutyFigure.HEAT_RATIO, 1, 0.035).evidence());
    onlyFlag(rule, wasteful.set(DutyFigure.HEAT_RATIO, 0.9, 0.035).evidence());
  }

  /** A coil without superheat holds liquid to its end (physics): it is flooded, not starved. */
  @Test
  void aFloodedCoilIsNotShortOfRefrigerant() {
    onlyFlag(rule, starved(2, 0.5).evidence());
    assertClear(rule, starved(0.2, 0.5).evidence());
  }

  /** A slower compressor gives less heat for still less power: physics of a variable speed. */
  @Test
  void aSlowerCompressorLeavesLittleLiquidToo() {
    AtDuty slower =
        starved(7, 0.4)
            .set(DutyFigure.HEAT_RATIO, 0.6, 0.025)
            .set(DutyFigure.POWER_RATIO, 0.55, 0.02)
            .set(DutyFigure.COP_RATIO, 1.08, 0.04);
    assertClear(rule, slower.evidence());
    onlyFlag(rule, slower.set(DutyFigure.COP_RATIO, 0.88, 0.04).evidence());
  }

  /**
   * One that gave its whole heat earlier in the same run lacks no refrigerant: a COP that holds
   * says that it slows down (physics of a variable speed).
   */
  @Test
  void whoGaveItsWholeHeatBeforeSlowsDown() {
    AtDuty slower =
        starved(8.5, 0.4)
            .set(DutyFigure.HEAT_RATIO, 1, 0.035)
            .set(DutyFigure.POWER_RATIO, 1.03, 0.025)
            .set(DutyFigure.COP_RATIO, 0.97, 0.035)
            .then()
            .set(DutyFigure.HEAT_RATIO, 0.84, 0.03)
            .set(DutyFigure.POWER_RATIO, 0.9, 0.02)
            .set(DutyFigure.COP_RATIO, 0.95, 0.035);
    assertClear(rule, slower.evidence());
    // What leaks in the course of a run costs COP as well.
    onlyFlag(rule, slower.set(DutyFigure.COP_RATIO, 0.83, 0.035).evidence());
  }

  /** The same figures of a compressor that cannot run slower are a leak. */
  @Test
  void aCompressorOfFixedSpeedIsShortOfRefrigerant() {
    assertClear(rule, slower(CompressorSpeed.VARIABLE).evidence());
    onlyFlag(rule, slower(CompressorSpeed.FIXED).evidence());
  }

  private static AtDuty slower(CompressorSpeed speed) {
    return AtDuty.sound(Rigs.withSpeed(speed))
        .set(DutyFigure.SUPERHEAT, 7, 0.4)
        .set(DutyFigure.SUBCOOLING, 1, 0.3)
        .set(DutyFigure.EVAPORATING, 273.15 + 3.5, 0.4)
        .set(DutyFigure.STANDARD_APPROACH, 24, 0.8)
        .set(DutyFigure.HEAT_RATIO, 0.6, 0.025)
        .set(DutyFigure.POWER_RATIO, 0.55, 0.02)
        .set(DutyFigure.COP_RATIO, 1.08, 0.04);
  }

  /**
   * Rossi and Braun, HVAC&R Research 3(1), 1997, table of signs: evaporating down, superheat up and
   * subcooling down together are a leak and nothing else.
   */
  @Test
  void threeSignsTogetherNeedNoLostHeat() {
    AtDuty right =
        starved(16, 0.5).set(DutyFigure.HEAT_RATIO, 1, 0.05).set(DutyFigure.COP_RATIO, 1.05, 0.05);
    onlyFlag(rule, right.evidence());
    // Within the probes' uncertainty none of the three is a sign.
    assertClear(rule, right.set(DutyFigure.SUPERHEAT, 16, 2.1).evidence());
    right.set(DutyFigure.SUPERHEAT, 16, 0.5);
    assertClear(rule, right.set(DutyFigure.SUBCOOLING, 1, 0.6).evidence());
    right.set(DutyFigure.SUBCOOLING, 1, 0.3);
    assertClear(rule, right.set(DutyFigure.STANDARD_APPROACH, 12, 0.8).evidence());
  }

  @Test
  void moreHeatThanPromisedIsNoLostCharge() {
    assertClear(
        rule,
        starved(16, 0.5)
            .set(DutyFigure.HEAT_RATIO, 1.1, 0.04)
            .set(DutyFigure.COP_RATIO, 1.1, 0.05)
            .evidence());
  }

  @Test
  void whereHeatIsNotKnownGraveSuperheatDoes() {
    onlyFlag(
        rule, starved(17, 0.5).without(DutyFigure.HEAT_RATIO, DutyFigure.COP_RATIO).evidence());
  }

  /**
   * The expanded interval of 89 +- 19 % holds heat that is clearly low (GUM 6.2.1, about 95 % of
   * cases), so that it is no evidence against what superheat and coil show.
   */
  @Test
  void heatThatIsHardlyKnownIsNoEvidenceAgainstGraveSuperheat() {
    AtDuty choked =
        starved(34, 1)
            .set(DutyFigure.SUBCOOLING, 6.9, 1)
            .set(DutyFigure.HEAT_RATIO, 0.89, 0.095)
            .set(DutyFigure.COP_RATIO, 0.95, 0.11);
    onlyFlag(rule, choked.evidence());
    // Charging tables of fixed orifices ask for up to some 25 K (from memory).
    assertClear(rule, choked.set(DutyFigure.SUPERHEAT, 25, 1).evidence());
    // For air whose wet bulb is at most 20 Cel they ask for some 15 K at the most.
    onlyFlag(rule, choked.set(DutyFigure.AIR, 273.15 + 17, 0.3).evidence());
    assertClear(rule, choked.set(DutyFigure.SUPERHEAT, 20, 1).evidence());
    choked.set(DutyFigure.AIR, 273.15 + 27, 0.3);
    choked.set(DutyFigure.SUPERHEAT, 34, 1);
    // Heat that is known to be right speaks for another cause.
    assertClear(rule, choked.set(DutyFigure.HEAT_RATIO, 1, 0.04).evidence());
  }

  /** A fixed orifice in warm humid air and cool water: much superheat, and the liquid is there. */
  @Test
  void muchSuperheatOfAFixedOrificeIsNoLostCharge() {
    AtDuty orifice =
        starved(15.3, 0.4)
            .set(DutyFigure.SUBCOOLING, 8.3, 0.4)
            .set(DutyFigure.STANDARD_APPROACH, 14.5, 0.5)
            .set(DutyFigure.HEAT_RATIO, 0.95, 0.065)
            .set(DutyFigure.COP_RATIO, 0.95, 0.08);
    assertClear(rule, orifice.evidence());
    assertClear(rule, orifice.without(DutyFigure.HEAT_RATIO, DutyFigure.COP_RATIO).evidence());
  }

  /** The three signs of a leak need no lost heat, so none that is known either. */
  @Test
  void threeSignsTogetherNeedNoHeatKnown() {
    AtDuty signs = starved(13, 0.5).without(DutyFigure.HEAT_RATIO, DutyFigure.COP_RATIO);
    onlyFlag(rule, signs.evidence());
    assertClear(rule, signs.set(DutyFigure.SUBCOOLING, 4, 0.3).evidence());
  }

  /** A leaking compressor valve: little is moved, so the coil is not drawn down. */
  @Test
  void superheatOfAWellFedCoilIsNoLostCharge() {
    AtDuty leaking = starved(15, 0.5).set(DutyFigure.SUBCOOLING, 6.6, 0.5);
    onlyFlag(rule, leaking.evidence());
    assertClear(rule, leaking.set(DutyFigure.STANDARD_APPROACH, 11, 0.5).evidence());
    onlyFlag(rule, leaking.set(DutyFigure.SUBCOOLING, 2.5, 0.5).evidence());
    onlyFlag(rule, leaking.without(DutyFigure.SUBCOOLING).evidence());
  }

  @Test
  void superheatSubcoolingAndALowCoilTogetherBearWithADoubtfulHeat() {
    AtDuty doubtful =
        starved(14.6, 0.8)
            .set(DutyFigure.HEAT_RATIO, 0.89, 0.065)
            .set(DutyFigure.COP_RATIO, 0.87, 0.07);
    onlyFlag(rule, doubtful.evidence());
    assertClear(rule, doubtful.set(DutyFigure.SUBCOOLING, 4, 0.3).evidence());
  }

  @Test
  void aValveThatHoldsBesideLittleAirIsShortOfAirNotOfRefrigerant() {
    assertClear(rule, starved(6, 0.4).set(DutyFigure.AIR_FLOW, 0.045e-3, 0.004e-3).evidence());
  }

  @Test
  void aValveThatHoldsOnACoilThatMayBeIcedSaysNothingOfTheCharge() {
    AtDuty cold =
        starved(6, 0.4)
            .set(DutyFigure.EVAPORATING, 273.15 - 12, 0.4)
            .set(DutyFigure.AIR, 273.15 + 4, 0.1);
    assertClear(rule, cold.evidence());
    onlyFlag(rule, cold.set(DutyFigure.SUPERHEAT, 16, 0.5).evidence());
  }

  @Test
  void aHighHeadIsNotALostCharge() {
    assertClear(rule, starved(16, 0.5).set(DutyFigure.CONDENSER_APPROACH, 13, 0.4).evidence());
  }

  @Test
  void liquidHeldBackPointsToARestriction() {
    assertThat(
            onlyFlag(rule, starved(16, 0.5).set(DutyFigure.SUBCOOLING, 12, 0.5).evidence())
                .causes()
                .get(0))
        .isEqualTo("filter drier or expansion valve clogged");
  }

  @Test
  void saysWhatIsMissing() {
    assertThat(
            reason(
                rule,
                AtDuty.sound().without(DutyFigure.SUPERHEAT, DutyFigure.SUBCOOLING).evidence()))
        .isEqualTo("neither superheat nor subcooling known while running steadily");
  }

  /** Superheat and subcooling tell by themselves where nothing says what heat there is. */
  @Test
  void needsNoHeatWhereGaugesAndClampsTell() {
    AtDuty unknownHeat =
        starved(13.6, 0.5)
            .without(DutyFigure.HEAT_RATIO, DutyFigure.COP_RATIO, DutyFigure.STANDARD_APPROACH);
    onlyFlag(rule, unknownHeat.evidence());
    assertClear(rule, unknownHeat.set(DutyFigure.SUPERHEAT, 13.4, 0.5).evidence());
    AtDuty someLiquid = unknownHeat.set(DutyFigure.SUPERHEAT, 15.6, 0.5);
    assertClear(rule, someLiquid.set(DutyFigure.SUBCOOLING, 2.5, 0.4).evidence());
    onlyFlag(rule, someLiquid.set(DutyFigure.STANDARD_APPROACH, 17, 1).evidence());
  }

  /**
   * In air of 15 Cel and less charging tables ask for some 11 K at the most (from memory), and a
   * valve holds 4 to 8 K over a dirty coil too (common practice): 18 K needs no heat to bear it
   * out.
   */
  @Test
  void graveSuperheatInColdAirNeedsNoHeat() {
    AtDuty choked = choked().set(DutyFigure.AIR, 273.15 + 10, 0.3);
    onlyFlag(rule, choked.evidence());
    // The clip hangs in the air, or as good as.
    assertClear(rule, choked.set(DutyFigure.SUCTION_EXCESS, -1, 0.58).evidence());
    choked.set(DutyFigure.SUCTION_EXCESS, -1.4, 0.58);
    // A valve that hunts high, a coil that is not drawn down, a heat that is known to be right.
    assertClear(rule, choked.set(DutyFigure.SUPERHEAT, 14, 1).evidence());
    choked.set(DutyFigure.SUPERHEAT, 18, 1.5);
    assertClear(rule, choked.set(DutyFigure.STANDARD_APPROACH, 13, 2).evidence());
    choked.set(DutyFigure.STANDARD_APPROACH, 22, 3);
    assertClear(rule, choked.set(DutyFigure.HEAT_RATIO, 1, 0.04).evidence());
  }

  /** In warmer air a fixed orifice may be charged for it: there some heat has to be missing. */
  @Test
  void graveSuperheatInWarmAirNeedsALossByItsExpandedUncertainty() {
    AtDuty choked = choked().set(DutyFigure.AIR, 273.15 + 24, 0.3);
    assertClear(rule, choked.evidence());
    onlyFlag(rule, choked.set(DutyFigure.HEAT_RATIO, 0.88, 0.055).evidence());
    assertClear(rule, choked.set(DutyFigure.HEAT_RATIO, 0.9, 0.055).evidence());
  }

  /** A restriction by its gauges: 18 K of superheat over a coil far below the air. */
  private static AtDuty choked() {
    return starved(18, 1.5)
        .set(DutyFigure.SUBCOOLING, 5.7, 0.6)
        .set(DutyFigure.STANDARD_APPROACH, 22, 3)
        .set(DutyFigure.SUCTION_EXCESS, -1.4, 0.58)
        .set(DutyFigure.HEAT_RATIO, 0.75, 0.18)
        .set(DutyFigure.COP_RATIO, 0.75, 0.18);
  }

  /**
   * A valve that holds its superheat has the refrigerant that the coil can evaporate; over a coil
   * that far down it may be the air that is short, unless it is known not to be.
   */
  @Test
  void aHeldSuperheatOverAVeryLowCoilMayBeForWantOfAir() {
    AtDuty held = starved(5, 0.5).set(DutyFigure.STANDARD_APPROACH, 25, 1.5);
    onlyFlag(rule, held.evidence());
    assertClear(rule, held.without(DutyFigure.HUMIDITY).evidence());
    assertClear(rule, held.without(DutyFigure.AIR_FLOW).evidence());
    onlyFlag(new EvaporatorApproach(), held.evidence());
    // A valve that is open all the way, and a coil that is no lower than many.
    onlyFlag(rule, held.set(DutyFigure.SUPERHEAT, 13, 0.5).evidence());
    held.set(DutyFigure.SUPERHEAT, 5, 0.5);
    onlyFlag(rule, held.set(DutyFigure.STANDARD_APPROACH, 16, 0.5).evidence());
  }
}
