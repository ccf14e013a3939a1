package heatwake.analysis.method;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.pool.Evaporation;
import heatwake.analysis.pool.HeatUp;
import heatwake.analysis.pool.PoolBody;
import heatwake.analysis.pool.SurfaceLoss;
import heatwake.analysis.pool.Weather;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.GaugePressure;
import heatwake.analysis.refrigerant.Refrigerant;
import heatwake.analysis.refrigerant.Saturation;
import heatwake.analysis.uncertainty.Correlation;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.Propagation;
import heatwake.analysis.water.PoolWater;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** The worked examples of docs/method.md, computed anew; the page must print these figures. */
class WorkedExamplesTest {
  private static final double ICE_POINT_K = 273.15;

  private static void onThePage(String title, String format, Object... figures) throws IOException {
    String page = Files.readString(Path.of("..", "docs", "method.md"));
    String example = page.substring(page.indexOf("**" + title + "**")).split("\n\n", 2)[0];
    assertThat(example.replaceAll("\\s+", " "))
        .contains(String.format(Locale.ROOT, format, figures));
  }

  @Test
  void heatAndCop() throws IOException {
    PoolWater water = PoolWater.of(0, 0.3e6);
    double inK = ICE_POINT_K + 27;
    double outK = ICE_POINT_K + 30;
    double flowM3PerS = 45 * 3.785411784e-3 / 60;
    Estimate[] inputs = {
      new Estimate(flowM3PerS, 0.01 * flowM3PerS),
      new Estimate(inK, 0.1),
      new Estimate(outK, 0.1),
      new Estimate(1, 0.001),
      new Estimate(6, 0.06)
    };
    Correlation pair = Correlation.none(5).with(1, 2, 0.95);
    Estimate heat =
        Propagation.of(x -> x[3] * water.heatW(x[0], x[1], x[1], x[2]) / 1e3, pair, inputs);
    Estimate cop =
        Propagation.of(x -> x[3] * water.heatW(x[0], x[1], x[1], x[2]) / 1e3 / x[4], pair, inputs);
    Estimate apart = Propagation.of(x -> water.heatW(x[0], x[1], x[1], x[2]) / 1e3, inputs);
    onThePage(
        "Heat and COP.",
        "k = %.5f MJ/(m3 K), so Q = %.3f kW and COP = %.3f.",
        water.heatCoefficientJPerM3K(outK, inK, inK) / 1e6,
        heat.value(),
        cop.value());
    onThePage("Heat and COP.", "are %.3f kW and %.3f:", heat.standard(), cop.standard());
    onThePage(
        "Heat and COP.",
        "Q = %.1f kW ± %.1f kW, COP = %.2f ± %.2f (k = 2)",
        heat.value(),
        heat.expanded(),
        cop.value(),
        cop.expanded());
    onThePage("Heat and COP.", "it would be ± %.1f kW", apart.expanded());
  }

  @Test
  void refrigerant() throws IOException {
    Saturation saturation = Saturation.of(Refrigerant.R410A);
    GaugePressure gauge = new GaugePressure(2.1e6);
    AbsolutePressure mountain = Atmosphere.standard(1500);
    double atSea =
        saturation.bubbleTemperatureK(gauge.absolute(AbsolutePressure.STANDARD_ATMOSPHERE))
            - ICE_POINT_K;
    double atHeight = saturation.bubbleTemperatureK(gauge.absolute(mountain)) - ICE_POINT_K;
    onThePage("Refrigerant.", "is %.2f Cel, so the subcooling is %.2f K", atSea, atSea - 33);
    onThePage(
        "Refrigerant.",
        "the air is %.2f kPa and the same gauge means %.2f Cel and %.2f K",
        mountain.pa() / 1e3,
        atHeight,
        atHeight - 33);
  }

  @Test
  void pool() throws IOException {
    double waterK = ICE_POINT_K + 28;
    double airK = ICE_POINT_K + 20;
    double equationW = 50 * Evaporation.heatWPerM2(waterK, airK, 0.5, 1);
    SurfaceLoss loss =
        SurfaceLoss.open(
            50,
            Estimate.exact(waterK),
            new Weather(
                Estimate.exact(airK),
                Estimate.exact(0.5),
                Estimate.exact(1),
                AbsolutePressure.STANDARD_ATMOSPHERE));
    onThePage(
        "Pool.",
        "gives %.2f kW and %.2f kg/h; with the factor of a quiet pool %.2f kW.",
        equationW / 1e3,
        equationW / Evaporation.latentHeatJPerKg(waterK) * 3600,
        loss.evaporationW().value() / 1e3);
    onThePage(
        "Pool.",
        "Convection %.2f kW, radiation %.2f kW: %.1f kW in all, of which %.1f kW standard"
            + " uncertainty; each kelvin more costs %.2f kW.",
        loss.convectionW().value() / 1e3,
        loss.radiationW().value() / 1e3,
        loss.totalW().value() / 1e3,
        loss.totalW().standard() / 1e3,
        loss.slopeWPerK() / 1e3);
    Estimate capacity =
        new PoolBody(Estimate.exact(62), PoolWater.of(0, 101_325)).capacityJPerK(waterK);
    HeatUp heatUp = new HeatUp(capacity, Estimate.exact(12_000), Estimate.exact(loss.slopeWPerK()));
    onThePage(
        "Pool.",
        "holds %.1f kWh/K; with 12 kW more than it loses it warms by 2 K in %.1f h.",
        capacity.value() / 3.6e6,
        heatUp.seconds(2) / 3600);
  }
}
