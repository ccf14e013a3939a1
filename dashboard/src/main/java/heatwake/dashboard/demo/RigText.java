package heatwake.dashboard.demo;

import heatwake.dashboard.demo.plant.SiteDesign;
import heatwake.dashboard.demo.plant.Tap;
import heatwake.dashboard.demo.plant.machine.HeaterDesign;
import heatwake.dashboard.demo.plant.machine.Nameplate;
import heatwake.dashboard.demo.plant.machine.RatingTest;
import heatwake.dashboard.demo.plant.sensor.SensorSpec;
import heatwake.dashboard.demo.plant.water.Circuit;
import java.util.List;
import java.util.Locale;

/** Writes the rig file of the simulated site, as a technician would. */
final class RigText {
  /** How every rig file of the demo begins, and no other does. */
  static final String FIRST_WORDS = "# The invented site of the demo";

  private final StringBuilder text = new StringBuilder();

  private RigText() {}

  /**
   * The rig of a scenario.
   *
   * @param brokerUrl where its probes publish
   */
  static String of(Scenario scenario, Nameplate plate, String brokerUrl) {
    RigText rig = new RigText();
    rig.line(FIRST_WORDS + ", scenario %s.", scenario.name());
    rig.site(scenario.site());
    rig.pump(scenario.site().circuit());
    rig.heater(scenario.site().heater(), plate);
    rig.line("[[source]]");
    rig.line("name = \"boxes\"");
    rig.line("mqtt = \"%s\"", brokerUrl);
    rig.probes(scenario.probes());
    return rig.text.toString();
  }

  private void site(SiteDesign site) {
    line("[site]");
    line("name = \"%s\"", DemoSite.NAME);
    line("altitude = \"%.0f m\"", site.altitudeM());
    line("");
    line("[pool]");
    line("volume = \"%.0f m3\"", site.basin().volumeM3());
    line("surface = \"%.0f m2\"", site.basin().surfaceM2());
    line("covered = %s", site.basin().covered());
    line("setpoint = \"%.0f Cel\"", site.setpointC());
    line("");
    line("[tariff]");
    line("price = 0.24");
    line("currency = \"coins\"");
    line("");
  }

  private void pump(Circuit circuit) {
    for (double share : new double[] {0.4, 0.7, 1, 1.2}) {
      double flow = share * circuit.totalM3PerS();
      double headPa = circuit.pumpHeadPa(flow) - circuit.suctionPa() * share * share;
      line("[[pump.point]]");
      line("flow = \"%.0f L/min\"", flow * 6e4);
      line("head = \"%.1f kPa\"", headPa / 1e3);
      line("");
    }
  }

  private void heater(HeaterDesign heater, Nameplate plate) {
    line("[heater]");
    line("label = \"unit 1\"");
    line("refrigerant = \"%s\"", heater.fluid().designation());
    line("flow-min = \"%.0f L/min\"", plate.flowMinM3PerS() * 6e4);
    line("flow-max = \"%.0f L/min\"", plate.flowMaxM3PerS() * 6e4);
    line("voltage = \"%.0f V\"", heater.electric().nominalV());
    line("current-max = \"%.1f A\"", plate.currentMaxA());
    line("breaker = \"%.0f A\"", plate.breakerA());
    line("restart-delay = \"%.0f s\"", heater.sequence().restartDelayS());
    line("");
    for (RatingTest test : plate.tests()) {
      line("[[heater.rating]]");
      line("air = \"%.0f Cel\"", test.airC());
      line("humidity = \"%.0f %%\"", test.humidity() * 100);
      line("water = \"%.0f Cel\"", test.waterC());
      line("heat = \"%.1f kW\"", test.heatW() / 1e3);
      line("power = \"%.2f kW\"", test.powerW() / 1e3);
      line("");
    }
  }

  private void probes(List<SensorSpec> probes) {
    for (SensorSpec probe : probes) {
      Tap tap = probe.tap();
      line("");
      line("[[probe]]");
      line("channel = \"%s\"", tap.channel());
      line("source = \"boxes\"");
      line("topic = \"%s\"", Node.of(tap).topic());
      line("field = \"/%s\"", tap.channel());
      line("time = \"/at\"");
      line("unit = \"%s\"", tap.unit());
      if (!tap.isState()) {
        line("uncertainty = \"%s\"", uncertainty(probe));
      }
      line("every = \"%.0f s\"", probe.intervalS());
    }
  }

  private static String uncertainty(SensorSpec probe) {
    if (probe.relative()) {
      return String.format(Locale.ROOT, "%.1f %%", probe.stated() * 100);
    }
    String unit = probe.tap().isTemperature() ? "K" : probe.tap().unit();
    return String.format(Locale.ROOT, "%.2f %s", probe.stated(), unit);
  }

  private void line(String format, Object... values) {
    text.append(String.format(Locale.ROOT, format, values)).append('\n');
  }
}
