package heatwake.analysis.duty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.refrigerant.Refrigerant;
import heatwake.analysis.scenario.AtDuty;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.site.Rating;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class DutyTest {
  private static final AbsolutePressure SEA_LEVEL = AbsolutePressure.STANDARD_ATMOSPHERE;

  private static CoilState coil(double airCel, double humidity, double coilCel, double share) {
    return new CoilState(
        new Estimate(273.15 + airCel, 0.1),
        new Estimate(humidity, 0.03),
        new Estimate(273.15 + coilCel, 0.4),
        new Estimate(share, 0.03),
        SEA_LEVEL);
  }

  @Test
  void standardAirAtTheRatedHeatIsItsOwnStandard() {
    assertThat(coil(27, 0.8, 13, 1).standardApproachK().value()).isCloseTo(14, within(0.01));
  }

  @Test
  void aDryCoilMayLieFurtherBelowTheAir() {
    // Same heat from drier air takes a colder coil; it is the same coil.
    assertThat(coil(27, 0.4, 8, 0.86).standardApproachK().value()).isLessThan(15);
    assertThat(coil(27, 0.8, 8, 0.86).standardApproachK().value()).isGreaterThan(19);
  }

  @Test
  void lessHeatFromTheSameApproachIsAWorseCoil() {
    assertThat(coil(27, 0.8, 13, 0.7).standardApproachK().value()).isGreaterThan(18);
  }

  /**
   * Psychrometric tables (ASHRAE Handbook Fundamentals, from memory): at 24 Cel a point of relative
   * humidity is 0.19 g of water in a kilogram of air, 0.48 kJ; three of them are 9 % of the 16 kJ
   * that air of 95 % gives up when it is cooled by 5 K.
   */
  @Test
  void theAirThroughACoilIsKnownNoBetterThanItsHumidity() {
    Estimate heat = new Estimate(8000, 0);
    Estimate drop = new Estimate(5, 0);
    double airK = 273.15 + 24;
    Estimate guessed =
        CoilAir.kgPerS(heat, airK, drop, new Estimate(0.95, 0.03), SEA_LEVEL).orElseThrow();
    Estimate exact =
        CoilAir.kgPerS(heat, airK, drop, Estimate.exact(0.95), SEA_LEVEL).orElseThrow();
    assertThat(guessed.value()).isEqualTo(exact.value());
    double byHumidity =
        Math.sqrt(guessed.standard() * guessed.standard() - exact.standard() * exact.standard())
            / guessed.value();
    assertThat(byHumidity).isCloseTo(0.09, within(0.015));
  }

  @Test
  void itsUncertaintyGrowsWithThatOfTheHumidity() {
    double known = coil(22, 0.7, 8, 0.9).standardApproachK().standard();
    double guessed =
        new CoilState(
                new Estimate(295.15, 0.1),
                new Estimate(0.65, 0.15),
                new Estimate(281.15, 0.4),
                new Estimate(0.9, 0.03),
                SEA_LEVEL)
            .standardApproachK()
            .standard();
    assertThat(guessed).isGreaterThan(2 * known);
  }

  /**
   * Reference: pressures of CoolProp 7.2.0 (computed): R-407C at 35 Cel has its bubble point at
   * 1544.8 kPa and its dew point at 1349.1 kPa; at 30 Cel its bubble point is at 1359.0 kPa. So at
   * 1349.1 kPa it bubbles at 35 - 5 (1544.8 - 1349.1) / (1544.8 - 1359.0) = 29.7 Cel, a glide of
   * 5.3 K. R-410A glides by 0.1 K (from memory), R-32 is a single substance.
   */
  @Test
  void aBlendsMeanLiesBelowItsDewPoint() {
    assertThat(Glide.of(Refrigerant.R407C).belowCondensingK(308.15)).isCloseTo(2.65, within(0.1));
    assertThat(Glide.of(Refrigerant.R410A).belowCondensingK(313.15)).isCloseTo(0.05, within(0.05));
    assertThat(Glide.of(Refrigerant.R32).belowCondensingK(313.15)).isCloseTo(0, within(0.01));
    assertThat(Glide.of(Refrigerant.R407C).belowCondensingK(Double.NaN)).isZero();
  }

  /**
   * An exchanger's approach goes with the heat it passes. A heat of 13 +- 10 kW (k = 2) tells that
   * to 38 %, the air alone to some 15 % (common practice: 2 % a kelvin), the nameplate better yet.
   */
  @Test
  void heatThatIsHardlyKnownIsNoMeasureOfHowHardExchangersWork() {
    Estimate promised = new Estimate(24_900, 800);
    assertThat(credible(new Estimate(13_000, 5_000), promised)).isEqualTo(promised);
    Estimate known = new Estimate(13_000, 1_500);
    assertThat(credible(known, promised)).isEqualTo(known);
    Estimate vague = new Estimate(24_000, 6_000);
    Estimate vaguer = new Estimate(13_000, 2_600);
    assertThat(credible(vaguer, vague)).isEqualTo(vaguer);
  }

  private static Estimate credible(Estimate heat, Estimate promised) {
    return CredibleHeat.of(Map.of(DutyFigure.HEAT, heat, DutyFigure.EXPECTED_HEAT, promised))
        .orElseThrow();
  }

  /**
   * Saturation pressure (steam tables, from memory): 3.57 kPa at 27 Cel, 6.99 kPa at 39 Cel. Air
   * that holds as much vapour on a hot day as 65 % at 27 Cel has 33 %.
   */
  @Test
  void aHotDayWarmsTheAirWithoutWettingIt() {
    Map<DutyFigure, Estimate> hot = new EnumMap<>(DutyFigure.class);
    hot.put(DutyFigure.AIR, new Estimate(273.15 + 39, 0.1));
    hot.put(DutyFigure.EVAPORATOR_APPROACH, new Estimate(30, 0.4));
    hot.put(DutyFigure.LOAD, new Estimate(1, 0.03));
    Map<DutyFigure, Estimate> measured = new EnumMap<>(hot);
    measured.put(DutyFigure.HUMIDITY, new Estimate(0.33, 0.15));
    CoilDuty coil = new CoilDuty(Optional.empty(), SEA_LEVEL);
    coil.read(hot);
    coil.read(measured);
    assertThat(hot.get(DutyFigure.STANDARD_APPROACH).value())
        .isCloseTo(measured.get(DutyFigure.STANDARD_APPROACH).value(), within(0.2));
  }

  /**
   * By hand: 12 kW less 95 % of 2.1 kW is 10.0 kW; cooling dry air of 1.006 kJ/(kg K) by 16 K it
   * takes 0.62 kg/s, by 8 K 1.24 kg/s; moist air less.
   */
  @Test
  void airThatCoolsFarIsLittleAtAnyHumidity() {
    Estimate cooledFar = airFlow(16).orElseThrow();
    double ratedW = greatest().heatW();
    assertThat(cooledFar.value() * ratedW).isCloseTo(0.62, within(0.01));
    assertThat(airFlow(8)).isEmpty();
  }

  private static Optional<Estimate> airFlow(double dropK) {
    Map<DutyFigure, Estimate> figures = new EnumMap<>(DutyFigure.class);
    figures.put(DutyFigure.AIR, new Estimate(273.15 + 27, 0.1));
    figures.put(DutyFigure.LOAD, new Estimate(0.75, 0.03));
    figures.put(DutyFigure.HEAT, new Estimate(12_000, 200));
    figures.put(DutyFigure.POWER, new Estimate(2_100, 20));
    figures.put(DutyFigure.AIR_DROP, new Estimate(dropK, 0.3));
    new CoilDuty(Optional.of(greatest()), SEA_LEVEL).read(figures);
    return Optional.ofNullable(figures.get(DutyFigure.AIR_FLOW));
  }

  private static Rating greatest() {
    return Rigs.typicalHeater().ratings().stream()
        .max(Comparator.comparingDouble(Rating::heatW))
        .orElseThrow();
  }

  @Test
  void meansWeighByTimeAndKeepTheirUncertainty() {
    Duty longer = AtDuty.sound().lasting(90).set(DutyFigure.HEAT_RATIO, 0.9, 0.04).duty();
    Duty shorter = AtDuty.sound().lasting(30).set(DutyFigure.HEAT_RATIO, 0.7, 0.04).duty();
    Estimate mean = Duty.meanOf(List.of(longer, shorter)).of(DutyFigure.HEAT_RATIO).orElseThrow();
    assertThat(mean.value()).isCloseTo(0.85, within(1e-12));
    assertThat(mean.standard()).isCloseTo(0.04, within(1e-12));
  }

  @Test
  void aSymptomIsGradedBeyondItsBandAndItsUncertainty() {
    // Superheat is sound from 2 to 9 K; 5 K above that is far above.
    assertThat(Symptom.SUPERHEAT.grade(new Estimate(9.4, 0.5))).isZero();
    assertThat(Symptom.SUPERHEAT.grade(new Estimate(12, 0.5))).isCloseTo(0.5, within(1e-12));
    assertThat(Symptom.SUPERHEAT.grade(new Estimate(30, 0.5))).isEqualTo(1);
    assertThat(Symptom.SUPERHEAT.grade(new Estimate(0.5, 0.5))).isCloseTo(-0.5, within(1e-12));
  }

  @Test
  void everySymptomOfASoundHeaterIsQuiet() {
    for (Symptom symptom : Symptom.values()) {
      assertThat(symptom.grade(AtDuty.sound().duty(), Rigs.typicalHeater()))
          .as(symptom.words())
          .hasValue(0);
    }
  }
}
