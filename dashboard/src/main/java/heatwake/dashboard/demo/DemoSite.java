package heatwake.dashboard.demo;

import heatwake.dashboard.demo.plant.Plant;
import heatwake.dashboard.demo.plant.SiteDesign;
import heatwake.dashboard.demo.plant.Tap;
import heatwake.dashboard.demo.plant.air.Climate;
import heatwake.dashboard.demo.plant.machine.CycleHeatPump;
import heatwake.dashboard.demo.plant.machine.Fluid;
import heatwake.dashboard.demo.plant.machine.HeaterDesign;
import heatwake.dashboard.demo.plant.machine.Nameplate;
import heatwake.dashboard.demo.plant.sensor.Kit;
import heatwake.dashboard.demo.plant.sensor.SensorSpec;
import heatwake.dashboard.demo.plant.water.Basin;
import heatwake.dashboard.demo.plant.water.Circuit;
import java.util.EnumSet;
import java.util.List;

/** The invented site of the demo: a covered garden pool with a 16 kW heater on a summer night. */
final class DemoSite {
  static final String NAME = "Alder Court";

  private static final double HEATER_SHARE = 0.6;
  private static final double EVENING_HOUR = 18;
  private static final double HOURS = 14;
  private static final double INTERVAL_S = 10;

  private DemoSite() {}

  static HeaterDesign heater() {
    return HeaterDesign.sized(
        Fluid.R32,
        HeaterDesign.Choice.usual(16e3),
        new HeaterDesign.Compressor(0, 0.033, 0.62, 2.8, false),
        new HeaterDesign.Sequence(
            30, 6, 40, 240, 0.8, 65, 80, HeaterDesign.Defrost.REVERSED_CYCLE, 2400),
        new HeaterDesign.Electric(230, 1, 0.96, 140, 8, 0));
  }

  /** This very piece off the line. */
  static Plant.Builder piece() {
    return (site, airC, moisture) ->
        new CycleHeatPump(site.heater().piece(0.992, 1.004, 0.99), airC, moisture);
  }

  static Nameplate nameplate() {
    HeaterDesign design = heater();
    return Nameplate.of(design, () -> new CycleHeatPump(design, 20, 0.009));
  }

  static Climate summer() {
    return Climate.of(19, 4.5, 0.72, 0.7, 0.7);
  }

  static Basin pool() {
    return new Basin(58, 36, true, 26.4);
  }

  /**
   * The site on an ordinary night: pump all night, heater switched on after a quarter of an hour.
   */
  static SiteDesign night() {
    HeaterDesign heater = heater();
    return new SiteDesign(
        summer(),
        60,
        pool(),
        Circuit.of(heater.waterM3PerS() / HEATER_SHARE, HEATER_SHARE),
        heater,
        28,
        List.of(new SiteDesign.Spell(180, 1e9)),
        List.of(new SiteDesign.Spell(900, 1e9)),
        EVENING_HOUR,
        HOURS * 3600,
        0);
  }

  /** All probes the technician has. */
  static List<SensorSpec> probes() {
    return probes(INTERVAL_S);
  }

  static List<SensorSpec> probes(double intervalS) {
    Kit kit = new Kit(intervalS, 0, 0, 0.1, 14, 0.02, 1, 0);
    return kit.clip(EnumSet.complementOf(EnumSet.of(Tap.AIR_OUT, Tap.WIND_SPEED, Tap.PUMP_ON)));
  }
}
