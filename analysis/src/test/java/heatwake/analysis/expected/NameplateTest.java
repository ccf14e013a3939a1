package heatwake.analysis.expected;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Rating;
import heatwake.analysis.site.Rig;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class NameplateTest {
  private static final Rating WARM =
      new Rating(cel(27), OptionalDouble.of(0.8), cel(27), 16_500, OptionalDouble.of(2750));
  private static final Rating COOL =
      new Rating(cel(10), OptionalDouble.of(0.63), cel(27), 9_500, OptionalDouble.of(2500));

  @Test
  void atARatingPointItIsTheNameplate() {
    Nameplate plate = plate(WARM, COOL);
    Estimate heat = plate.heatW(conditions(27, 0.8, 27));
    assertThat(heat.value()).isCloseTo(16_500, within(50.0));
    assertThat(heat.standard() / heat.value()).isCloseTo(0.029, within(0.003));
    assertThat(plate.powerW(conditions(10, 0.63, 27)).orElseThrow().value())
        .isCloseTo(2500, within(10.0));
  }

  @Test
  void betweenTwoPointsItsLogarithmGoesStraightByWetBulb() {
    // Wet bulbs by psychrolib 1.1.1 at 101.325 kPa: 27 Cel 80 % 24.263, 10 Cel 63 % 6.759,
    // 15 Cel 70 % 11.921 Cel. So 9500 (16.5 / 9.5)^((11.921 - 6.759) / (24.263 - 6.759)) = 11 180
    // W.
    Estimate heat = plate(WARM, COOL).heatW(conditions(15, 0.7, 27));
    assertThat(heat.value()).isCloseTo(11_180, within(60.0));
    assertThat(heat.standard() / heat.value()).isLessThan(0.035);
  }

  @Test
  void oneSinglePointUsesUsualSlopesAndSaysHowLittleItKnows() {
    Nameplate plate = plate(WARM);
    Estimate heat = plate.heatW(conditions(10, 0.63, 27));
    // 17.5 K of wet bulb at 2.7 % of what is left each: 38 % less than 16.5 kW.
    assertThat(heat.value()).isCloseTo(16_500 * Math.exp(-0.027 * 17.504), within(20.0));
    assertThat(heat.standard() / heat.value()).isCloseTo(0.006 * 17.504, within(0.02));
    assertThat(plate.heatW(conditions(27, 0.8, 32)).value())
        .isCloseTo(16_500 * Math.exp(-0.006 * 5), within(20.0));
  }

  @Test
  void thirdPointSettlesTheSlopeByWater() {
    Rating hot =
        new Rating(cel(27), OptionalDouble.of(0.8), cel(40), 14_000, OptionalDouble.of(3500));
    Estimate heat = plate(WARM, COOL, hot).heatW(conditions(27, 0.8, 33.5));
    // Half way between 16.5 and 14 kW by the logarithm: their geometric mean, 15.20 kW.
    assertThat(heat.value()).isCloseTo(15_199, within(60.0));
  }

  /**
   * Power of a compressor bends over the evaporating temperature: it is greatest at a pressure
   * ratio of two to three (common practice). A plate that shows it says that a plane does not do.
   */
  @Test
  void pointsThatBendOffAPlaneWidenTheFigure() {
    Nameplate straight =
        plate(powered(27, 0.8, 3790), powered(15, 0.7, 3780), powered(10, 0.63, 3770));
    Nameplate bent = plate(powered(27, 0.8, 3790), powered(15, 0.7, 4010), powered(10, 0.63, 3770));
    Estimate known = straight.powerW(conditions(15, 0.7, 27)).orElseThrow();
    Estimate power = bent.powerW(conditions(15, 0.7, 27)).orElseThrow();
    assertThat(known.standard() / known.value()).isCloseTo(0.027, within(0.002));
    // The outer points and the middle one lie 6 % apart: what is stated has to hold all of them.
    assertThat(power.value() - power.expanded()).isLessThan(3770);
    assertThat(power.value() + power.expanded()).isGreaterThan(4010);
    // By hand from the definition of the Birge ratio: innovations of 11 % and 8 % where 6.5 % and
    // 2.5 % were expected; the root of (1.7^2 + 3.3^2) / 2 is 2.6, and 1.5 % of each point grows to
    // 3.9 %.
    assertThat(power.standard() / power.value()).isCloseTo(0.05, within(0.01));
  }

  private static Rating powered(double airCel, double humidity, double powerW) {
    return new Rating(
        cel(airCel), OptionalDouble.of(humidity), cel(27), 20_000, OptionalDouble.of(powerW));
  }

  @Test
  void humidityThatIsNotKnownWidensTheFigure() {
    Estimate wetBulb =
        Conditions.wetBulb(
            Estimate.exact(cel(27)), new Estimate(0.7, 0.15), AbsolutePressure.STANDARD_ATMOSPHERE);
    // psychrolib 1.1.1: 27 Cel at 63 % 21.688, at 80 % 24.263 Cel: 0.151 K per percent.
    assertThat(wetBulb.value()).isCloseTo(cel(22.8), within(0.1));
    assertThat(wetBulb.standard()).isCloseTo(15 * 0.151, within(0.1));
  }

  /**
   * Published tables of air to water machines of fixed speed give about 100 % at 7 Cel, 69 % at -7
   * and 54 % at -15 (common practice, values from memory; wet bulbs 6, -8 and -16 Cel). From the
   * first two the third has to follow within what is stated, which a straight line would miss: 49
   * %.
   */
  @Test
  void belowItsPointsHeatBendsAsPublishedTablesDo() {
    Nameplate plate =
        plate(
            new Rating(cel(7), OptionalDouble.of(0.87), cel(27), 10_000, OptionalDouble.empty()),
            new Rating(cel(-7), OptionalDouble.of(0.75), cel(27), 6_900, OptionalDouble.empty()));
    Estimate heat = plate.heatW(conditions(-15, 0.75, 27));
    assertThat(heat.value()).isCloseTo(5_550, within(200.0));
    assertThat(heat.value() - heat.expanded()).isLessThan(5_400);
  }

  /**
   * A coil whose surface is dry takes cp (air - surface), ASHRAE's balance of a dry coil, however
   * dry the air. By hand with a surface of 23.5 Cel in air of 40 Cel: saturated there, moisture is
   * 0.0184 kg/kg (steam table: 2.897 kPa), so 1.006 x 40 + 0.0184 (2501 + 1.86 x 40) = 87.6 kJ/kg,
   * which is saturated air of 27.5 Cel (0.0235 kg/kg). With 2.3 K more and less: 28.95, 26.1 Cel.
   */
  @Test
  void airThatIsTooDryToCondenseCountsByItsTemperature() {
    Estimate desert = wetBulb(40, 0.18);
    assertThat(desert.value()).isCloseTo(cel(27.5), within(0.2));
    assertThat(wetBulb(40, 0.10).value()).isCloseTo(desert.value(), within(0.01));
    assertThat(desert.standard()).isCloseTo(1.42, within(0.1));
    // Moist air keeps its own wet bulb, psychrolib 1.1.1: 24.263 Cel.
    assertThat(wetBulb(27, 0.8).value()).isCloseTo(cel(24.263), within(0.01));
    assertThat(wetBulb(27, 0.8).standard()).isZero();
  }

  private static Estimate wetBulb(double airCel, double humidity) {
    return Conditions.wetBulb(
        Estimate.exact(cel(airCel)),
        Estimate.exact(humidity),
        AbsolutePressure.STANDARD_ATMOSPHERE);
  }

  private static Nameplate plate(Rating... ratings) {
    Heater typical = Rigs.typicalHeater();
    Rig rig =
        Rigs.withHeater(
            new Heater(
                typical.label(),
                typical.refrigerant(),
                typical.flowMinM3PerS(),
                typical.flowMaxM3PerS(),
                typical.voltageV(),
                typical.currentMaxA(),
                typical.breakerA(),
                typical.restartDelayS(),
                typical.pressureMaxPa(),
                typical.speed(),
                List.of(ratings)));
    return Nameplate.of(rig).orElseThrow();
  }

  private static Conditions conditions(double airCel, double humidity, double waterCel) {
    return new Conditions(
        Conditions.wetBulb(
            Estimate.exact(cel(airCel)),
            Estimate.exact(humidity),
            AbsolutePressure.STANDARD_ATMOSPHERE),
        Estimate.exact(cel(waterCel)));
  }

  private static double cel(double cel) {
    return cel + 273.15;
  }
}
