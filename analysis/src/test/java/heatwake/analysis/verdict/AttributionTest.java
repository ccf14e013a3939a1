package heatwake.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.finding.Side;
import heatwake.analysis.scenario.AtDuty;
import heatwake.analysis.scenario.Rigs;
import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AttributionTest {
  private static final double SHOWS = 0.7;

  /**
   * Reference: the rule table of Rossi and Braun (HVAC&R Research 3(1), 1997), as reprinted in
   * table 1-1 of Li's thesis (Purdue), read. Signs of evaporating temperature, superheat,
   * condensing temperature, subcooling, discharge temperature, and air temperature change over the
   * evaporator. It describes a fixed-orifice air conditioner; the sides are our mapping to a pool
   * heater: what fouls its condenser is water, what fouls its evaporator is air.
   */
  @ParameterizedTest
  @CsvSource({
    "refrigerant leakage,      -, +, -, -, +, -, REFRIGERANT",
    "compressor valve leak,    +, -, -, -, -, -, REFRIGERANT",
    "liquid-line restriction,  -, +, -, +, +, -, REFRIGERANT",
    "condenser fouling,        +, -, +, -, +, -, WATER",
    "evaporator fouling,       -, -, -, -, -, +, AIRFLOW",
  })
  void agreesWithThePublishedSigns(
      String fault,
      String evaporating,
      String superheat,
      String condensing,
      String subcooling,
      String discharge,
      String airChange,
      Side side) {
    Map<Symptom, Double> grades = new EnumMap<>(Symptom.class);
    grades.put(Symptom.FLOW, 0.0);
    // The table has temperatures; the symptom is how far evaporation lies below the air.
    grades.put(Symptom.EVAPORATING, -sign(evaporating));
    grades.put(Symptom.SUPERHEAT, sign(superheat));
    grades.put(Symptom.CONDENSING, sign(condensing));
    grades.put(Symptom.SUBCOOLING, sign(subcooling));
    // The symptom is discharge above condensing: known where their signs differ.
    if (!discharge.equals(condensing)) {
      grades.put(Symptom.DISCHARGE, sign(discharge));
    }
    // The symptom is the flow of air, of which only a greater change tells: less heat means less.
    if (airChange.equals("+")) {
      grades.put(Symptom.AIR_FLOW, -SHOWS);
    }
    // Capacity falls with every one of them (same thesis).
    grades.put(Symptom.HEAT, -SHOWS);
    assertThat(Attribution.of(grades).side()).as(fault).isEqualTo(side);
  }

  private static double sign(String sign) {
    return sign.equals("+") ? SHOWS : -SHOWS;
  }

  @Test
  void namesTheCauseOfALostCharge() {
    Attribution found =
        Attribution.of(
            AtDuty.sound()
                .set(DutyFigure.HEAT_RATIO, 0.75, 0.03)
                .set(DutyFigure.POWER_RATIO, 0.88, 0.02)
                .set(DutyFigure.SUPERHEAT, 17, 0.5)
                .set(DutyFigure.SUBCOOLING, 0.5, 0.3)
                .set(DutyFigure.EVAPORATOR_APPROACH, 20, 0.4)
                .set(DutyFigure.STANDARD_APPROACH, 26, 0.8)
                .duty(),
            Rigs.typicalHeater());
    assertThat(found.likeliest()).isEqualTo(Cause.UNDERCHARGE);
    assertThat(found.side()).isEqualTo(Side.REFRIGERANT);
    assertThat(found.confidence()).isGreaterThan(0.75);
  }

  /**
   * Evaporator fouling of the table above, on a fixed orifice: both fall, and that is no lost
   * charge.
   */
  @Test
  void littleSubcoolingOfAFloodedCoilSpeaksForNoLostCharge() {
    AtDuty flooded =
        AtDuty.sound()
            .set(DutyFigure.HEAT_RATIO, 0.75, 0.03)
            .set(DutyFigure.SUPERHEAT, 0, 0.5)
            .set(DutyFigure.EVAPORATOR_APPROACH, 25, 0.4)
            .set(DutyFigure.STANDARD_APPROACH, 30, 0.8);
    double little = agreement(flooded.set(DutyFigure.SUBCOOLING, 0, 0.3));
    assertThat(little).isEqualTo(agreement(flooded.set(DutyFigure.SUBCOOLING, 5, 0.3)));
  }

  private static double agreement(AtDuty figures) {
    return Attribution.of(figures.duty(), Rigs.typicalHeater()).ranking().stream()
        .filter(ranked -> ranked.cause() == Cause.UNDERCHARGE)
        .mapToDouble(Attribution.Ranked::agreement)
        .findFirst()
        .orElseThrow();
  }

  @Test
  void lowFlowWithAHighApproachIsWater() {
    Attribution found =
        Attribution.of(
            AtDuty.sound()
                .set(DutyFigure.FLOW, 50e-3 / 60, 1e-3 / 60)
                .set(DutyFigure.CONDENSER_APPROACH, 14, 0.4)
                .set(DutyFigure.POWER_RATIO, 1.12, 0.02)
                .duty(),
            Rigs.typicalHeater());
    assertThat(found.likeliest()).isEqualTo(Cause.LOW_WATER_FLOW);
    assertThat(found.side()).isEqualTo(Side.WATER);
  }

  @Test
  void aHighHeadWithoutSubcoolingKnownMayBeScaleOrCharge() {
    Attribution found =
        Attribution.of(
            AtDuty.sound()
                .without(DutyFigure.SUBCOOLING)
                .set(DutyFigure.CONDENSER_APPROACH, 15, 0.4)
                .duty(),
            Rigs.typicalHeater());
    assertThat(found.side()).isEqualTo(Side.UNDECIDED);
  }

  /**
   * The liquid can be cooled by all of what lies between condensing and entering water, so that
   * much subcooling comes with a high head by itself; only liquid backed up comes near the water
   * (effectiveness of an exchanger: physics). The table above too has less subcooling with a fouled
   * condenser.
   */
  @Test
  void muchSubcoolingIsChargeOnlyWhereTheLiquidComesNearTheWater() {
    AtDuty high =
        AtDuty.sound()
            .set(DutyFigure.CONDENSER_APPROACH, 20, 0.5)
            .set(DutyFigure.POWER_RATIO, 1.4, 0.05)
            .set(DutyFigure.SUBCOOLING, 9.7, 0.5);
    Attribution scale =
        Attribution.of(
            high.set(DutyFigure.SUBCOOLING_SHARE, 9.7 / 22.4, 0.03).duty(), Rigs.typicalHeater());
    assertThat(scale.likeliest()).isEqualTo(Cause.SCALED_CONDENSER);
    assertThat(scale.side()).isEqualTo(Side.WATER);
    Attribution charge =
        Attribution.of(
            high.set(DutyFigure.SUBCOOLING, 19, 0.5)
                .set(DutyFigure.SUBCOOLING_SHARE, 19 / 22.4, 0.03)
                .duty(),
            Rigs.typicalHeater());
    assertThat(charge.likeliest()).isEqualTo(Cause.OVERCHARGE);
    assertThat(charge.side()).isEqualTo(Side.REFRIGERANT);
  }

  @Test
  void heatAloneNamesNobody() {
    Attribution found =
        Attribution.of(
            AtDuty.sound().only(DutyFigure.HEAT_RATIO).set(DutyFigure.HEAT_RATIO, 0.6, 0.02).duty(),
            Rigs.typicalHeater());
    assertThat(found.side()).isEqualTo(Side.UNDECIDED);
  }

  @Test
  void soundFiguresNameNobody() {
    assertThat(Attribution.of(AtDuty.sound().duty(), Rigs.typicalHeater()).side())
        .isEqualTo(Side.UNDECIDED);
  }

  /**
   * Air through the coil is the heat taken from it over what each kilogram gives up, so half of the
   * usual 0.07 kg/s (common practice) comes of a misread heat only where that is misread by half:
   * then it is not right by the nameplate.
   */
  @Test
  void littleAirByAHeatThatIsRightIsNoMisreadHeat() {
    AtDuty half =
        AtDuty.sound()
            .set(DutyFigure.HEAT_RATIO, 0.95, 0.05)
            .set(DutyFigure.COP_RATIO, 0.9, 0.055)
            .set(DutyFigure.POWER_RATIO, 1.05, 0.034)
            .set(DutyFigure.EVAPORATOR_APPROACH, 20.4, 0.3)
            .set(DutyFigure.STANDARD_APPROACH, 18.3, 0.9)
            .set(DutyFigure.AIR_FLOW, 0.029e-3, 0.003e-3)
            .set(DutyFigure.AIR_DROP, 15, 0.15);
    Attribution found = Attribution.of(half.duty(), Rigs.typicalHeater());
    assertThat(found.side()).isEqualTo(Side.AIRFLOW);
    assertThat(found.likeliest()).isEqualTo(Cause.WEAK_AIRFLOW);
  }

  @Test
  void littleAirByALowHeatMayBeAMisreadHeat() {
    assertThat(agreementOfMisledHeat(-1)).isGreaterThan(agreementOfMisledHeat(0));
  }

  private static double agreementOfMisledHeat(double heat) {
    return Attribution.of(Map.of(Symptom.HEAT, heat, Symptom.AIR_FLOW, -1.0)).ranking().stream()
        .filter(ranked -> ranked.cause() == Cause.MISLED_HEAT)
        .findFirst()
        .orElseThrow()
        .agreement();
  }
}
