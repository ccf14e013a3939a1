package heatwake.dashboard.score;

import heatwake.dashboard.demo.plant.Tap;
import heatwake.dashboard.demo.plant.air.Climate;
import heatwake.dashboard.demo.plant.fault.Ailment;
import heatwake.dashboard.demo.plant.fault.Fault;
import heatwake.dashboard.demo.plant.fault.Severity;
import heatwake.dashboard.demo.plant.sensor.ProbeTrouble;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.SplittableRandom;

/**
 * What an installer records at the pad: ten minutes of circulation, then the heater is switched on
 * and watched for the better part of an hour. Only such faults as show themselves in that time.
 */
final class VisitCases {
  private static final double HOURS = 1.1;
  private static final double SWITCHED_ON_S = 600;

  /** Half of the time that the heater is watched. */
  private static final double MEANWHILE_S = 2400;

  private static final List<Fault> SHOWN_AT_ONCE =
      List.of(
          Fault.BYPASS_OPEN,
          Fault.STRAINER_BLOCKED,
          Fault.WATER_STOPS,
          Fault.SCALED_CONDENSER,
          Fault.DIRTY_COIL,
          Fault.WEAK_FAN,
          Fault.RECIRCULATION,
          Fault.UNDERCHARGE,
          Fault.OVERCHARGE,
          Fault.NON_CONDENSABLES,
          Fault.VALVE_LEAK,
          Fault.CONTACTOR_DEAD,
          Fault.CAPACITOR_DEAD,
          Fault.LOW_VOLTAGE,
          Fault.HIGH_CURRENT);

  private final Stock stock;
  private final SplittableRandom random;
  private final List<Case> cases = new ArrayList<>();

  private VisitCases(Stock stock, long seed) {
    this.stock = stock;
    this.random = new SplittableRandom(seed);
  }

  static List<Case> of(Stock stock, long seed) {
    VisitCases book = new VisitCases(stock, seed);
    book.healthy();
    for (Severity severity : List.of(Severity.MODERATE, Severity.SEVERE)) {
      SHOWN_AT_ONCE.forEach(fault -> book.ill(fault, severity));
      book.probes(severity);
    }
    return book.cases;
  }

  private void healthy() {
    for (ProbeSet probes : ProbeSet.values()) {
      cases.add(draft("healthy, visit").probes(probes).build());
    }
    cases.add(draft("healthy, visit in the heat").climate(Climate.of(31, 6, 0.4, 1, 0.9)).build());
    cases.add(draft("healthy, visit in the cool").climate(Climate.of(13, 4, 0.7, 1, 0.3)).build());
  }

  private void ill(Fault fault, Severity severity) {
    double fromS = fault == Fault.WATER_STOPS ? MEANWHILE_S : 0;
    cases.add(
        draft(FaultCases.words(fault), severity)
            .ill(new Ailment(fault, severity, fromS))
            .truth(FaultCases.truth(fault, severity))
            .build());
  }

  private void probes(Severity severity) {
    double worse = severity == Severity.SEVERE ? 2 : 1;
    cases.add(
        draft("pair reads apart", severity)
            .trouble(trouble(Tap.WATER_OUT, ProbeTrouble.Kind.OFFSET, 0.5 + 0.6 * worse, 0))
            .truth(FaultCases.measurement(severity, "probe-offset", Set.of()))
            .build());
    cases.add(
        draft("probes swapped", severity)
            .trouble(trouble(Tap.WATER_IN, ProbeTrouble.Kind.SWAPPED, 1, 0))
            .trouble(trouble(Tap.WATER_OUT, ProbeTrouble.Kind.SWAPPED, 1, 0))
            .truth(FaultCases.measurement(severity, "probes-swapped", Set.of()))
            .build());
    cases.add(
        draft("outlet probe open", severity)
            .trouble(trouble(Tap.WATER_OUT, ProbeTrouble.Kind.OPEN, -127, MEANWHILE_S))
            .truth(FaultCases.measurement(severity, "probe-fault", Set.of("data-gap")))
            .build());
  }

  private static ProbeTrouble trouble(
      Tap tap, ProbeTrouble.Kind kind, double level, double startS) {
    return new ProbeTrouble(tap, kind, level, startS);
  }

  private Draft draft(String name, Severity severity) {
    return draft(name + ", visit, " + severity.name().toLowerCase(Locale.ROOT));
  }

  /** All probes are clipped on for a visit, and the pool is cold enough to call for heat. */
  private Draft draft(String name) {
    return new Draft(name, stock, random.nextLong())
        .hours(HOURS)
        .heaterOnAt(SWITCHED_ON_S)
        .climate(Climate.of(17 + 9 * random.nextDouble(), 4, 0.75, 0.6, 0.5))
        .startC(21 + 4 * random.nextDouble())
        .probes(ProbeSet.FULL)
        .kit(HealthyCases.kit(random));
  }
}
