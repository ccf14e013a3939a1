package heatwake.dashboard.demo;

import heatwake.collector.mistake.MistakeException;
import heatwake.dashboard.demo.plant.SiteDesign;
import heatwake.dashboard.demo.plant.Tap;
import heatwake.dashboard.demo.plant.air.Climate;
import heatwake.dashboard.demo.plant.fault.Ailment;
import heatwake.dashboard.demo.plant.fault.Fault;
import heatwake.dashboard.demo.plant.fault.Severity;
import heatwake.dashboard.demo.plant.sensor.ProbeTrouble;
import heatwake.dashboard.demo.plant.water.Basin;
import java.util.List;
import java.util.stream.Collectors;

/** The stories of the demo. */
public final class Scenarios {
  /** Told when the person asks for none in particular. */
  public static final String USUAL = "low-flow";

  private static final double HOUR = 3600;

  private static final List<Scenario> ALL =
      List.of(
          plain("healthy-night", "Nothing is wrong; the pool reaches its set temperature."),
          ill(
              "low-flow",
              "At 03:40 leaves block the strainer and the heater gets too little water.",
              new Ailment(Fault.STRAINER_BLOCKED, Severity.SEVERE, 9 * HOUR + 40 * 60)),
          ill(
              "loading-filter",
              "The filter loads up through the night and the flow falls.",
              Ailment.of(Fault.FILTER_LOADING, Severity.MODERATE)),
          ill(
              "scaled-condenser",
              "Lime on the condenser: flow is right, heat comes hard.",
              Ailment.of(Fault.SCALED_CONDENSER, Severity.MODERATE)),
          ill(
              "low-charge",
              "A quarter of the refrigerant has leaked away.",
              Ailment.of(Fault.UNDERCHARGE, Severity.MODERATE)),
          ill(
              "dirty-coil",
              "Leaves and dust on the air coil.",
              Ailment.of(Fault.DIRTY_COIL, Severity.MODERATE)),
          ill(
              "recirculation",
              "The heater stands in a corner and breathes its own cold air.",
              Ailment.of(Fault.RECIRCULATION, Severity.MODERATE)),
          frosting(),
          shortCycling(),
          pastSetpoint(),
          ill(
              "no-compressor",
              "After half the night the start capacitor fails; the motor only hums.",
              Ailment.of(Fault.CAPACITOR_DEAD, Severity.MODERATE)),
          ill(
              "low-voltage",
              "The supply sags to five sixths of what it should be.",
              Ailment.of(Fault.LOW_VOLTAGE, Severity.MODERATE)),
          pumpTimer(),
          windyPool(),
          troubled(
              "probe-swapped",
              "Inlet and outlet probes were exchanged when they were clipped on.",
              new ProbeTrouble(Tap.WATER_IN, ProbeTrouble.Kind.SWAPPED, 1, 0),
              new ProbeTrouble(Tap.WATER_OUT, ProbeTrouble.Kind.SWAPPED, 1, 0)),
          troubled(
              "probe-slipped",
              "At 21:00 the outlet probe slips half off its pipe.",
              new ProbeTrouble(Tap.WATER_OUT, ProbeTrouble.Kind.SLIPPED, 0.5, 3 * HOUR)),
          troubled(
              "lost-probe",
              "The power meter says nothing for three quarters of an hour.",
              new ProbeTrouble(Tap.POWER, ProbeTrouble.Kind.SILENT, 45, 4 * HOUR)),
          startUp());

  private Scenarios() {}

  /** Every scenario, in the order in which they are documented. */
  public static List<Scenario> all() {
    return ALL;
  }

  /**
   * The scenario of a name.
   *
   * @throws MistakeException listing the names there are
   */
  public static Scenario of(String name) {
    return ALL.stream()
        .filter(scenario -> scenario.name().equals(name))
        .findFirst()
        .orElseThrow(
            () ->
                new MistakeException(
                    "--scenario "
                        + name
                        + ": there is no such scenario; choose one of "
                        + ALL.stream().map(Scenario::name).collect(Collectors.joining(", "))));
  }

  private static Scenario plain(String name, String story) {
    return new Scenario(name, story, DemoSite.night(), DemoSite.probes(), List.of(), List.of());
  }

  private static Scenario ill(String name, String story, Ailment... ailments) {
    return on(DemoSite.night(), name, story, ailments);
  }

  private static Scenario on(SiteDesign site, String name, String story, Ailment... ailments) {
    return new Scenario(name, story, site, DemoSite.probes(), List.of(ailments), List.of());
  }

  private static Scenario troubled(String name, String story, ProbeTrouble... troubles) {
    return new Scenario(
        name, story, DemoSite.night(), DemoSite.probes(), List.of(), List.of(troubles));
  }

  private static Scenario frosting() {
    return on(
        DemoSite.night().in(Climate.of(6, 2.5, 0.88, 0.5, 0.2)).with(new Basin(58, 36, true, 27)),
        "frosting",
        "A cold damp night, and the heater never defrosts.",
        Ailment.of(Fault.NO_DEFROST, Severity.MODERATE));
  }

  private static Scenario shortCycling() {
    return on(
        DemoSite.night().with(new Basin(58, 36, true, 26.9)),
        "short-cycling",
        "The controller's sensor feels the heater's own heat: it starts and stops all night.",
        Ailment.of(Fault.SHORT_CYCLING, Severity.SEVERE));
  }

  private static Scenario pastSetpoint() {
    return on(
        DemoSite.night().with(new Basin(36, 24, true, 27.4)),
        "past-setpoint",
        "The thermostat reads low and the heater goes on heating.",
        Ailment.of(Fault.RUNS_PAST_SETPOINT, Severity.SEVERE));
  }

  private static Scenario pumpTimer() {
    return on(
        DemoSite.night()
            .with(new Basin(58, 36, true, 24))
            .pumped(List.of(new SiteDesign.Spell(180, 5 * HOUR))),
        "pump-timer",
        "The timer stops the pump at 23:00 while the pool is still cold.");
  }

  private static Scenario windyPool() {
    return on(
        DemoSite.night().in(Climate.of(13, 3, 0.5, 2, 0.9)).with(new Basin(58, 48, false, 26)),
        "windy-pool",
        "No cover, clear sky and wind: the pool loses what the heater gives.");
  }

  private static Scenario startUp() {
    SiteDesign site = DemoSite.night().with(new Basin(20, 14, true, 27.3)).lasting(3 * HOUR);
    return new Scenario(
        "start-up",
        "Three hours at a new site, every two seconds: the start-up list ticks itself off.",
        site,
        DemoSite.probes(2),
        List.of(),
        List.of());
  }
}
