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
  void betweenTwoPointsItGoesStraightByWetBulb() {
    // Wet bulbs by psychrolib 1.1.1 at 101.325 kPa: 27 Cel 80 % 24.263, 10 Cel 63 % 6.759,
    // 15 Cel 70 % 11.921 Cel. So 9500 + 7000 (11.921 - 6.759) / (24.263 - 6.759) = 11 564 W.
    Estimate heat = plate(WARM, COOL).heatW(conditions(15, 0.7, 27));
    assertThat(heat.value()).isCloseTo(11_564, within(60.0));
    assertThat(heat.standard() / heat.value()).isLessThan(0.035);
  }

  @Test
  void oneSinglePointUsesUsualSlopesAndSaysHowLittleItKnows() {
    Nameplate plate = plate(WARM);
    Estimate heat = plate.heatW(conditions(10, 0.63, 27));
    // 17.5 K of wet bulb at 2.4 % each: 42 % less than 16.5 kW.
    assertThat(heat.value()).isCloseTo(16_500 * (1 - 0.024 * 17.504), within(20.0));
    assertThat(heat.standard()).isCloseTo(16_500 * 0.006 * 17.504, within(250.0));
    assertThat(plate.heatW(conditions(27, 0.8, 32)).value())
        .isCloseTo(16_500 * (1 - 0.006 * 5), within(20.0));
  }

  @Test
  void thirdPointSettlesTheSlopeByWater() {
    Rating hot =
        new Rating(cel(27), OptionalDouble.of(0.8), cel(40), 14_000, OptionalDouble.of(3500));
    Estimate heat = plate(WARM, COOL, hot).heatW(conditions(27, 0.8, 33.5));
    assertThat(heat.value()).isCloseTo(15_250, within(60.0));
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
