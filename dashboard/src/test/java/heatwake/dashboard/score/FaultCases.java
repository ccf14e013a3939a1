package heatwake.dashboard.score;

import heatwake.analysis.finding.Side;
import heatwake.dashboard.demo.plant.SiteDesign;
import heatwake.dashboard.demo.plant.Tap;
import heatwake.dashboard.demo.plant.air.Climate;
import heatwake.dashboard.demo.plant.fault.Ailment;
import heatwake.dashboard.demo.plant.fault.Fault;
import heatwake.dashboard.demo.plant.fault.Severity;
import heatwake.dashboard.demo.plant.sensor.ProbeTrouble;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;

/**
 * Runs in which something is wrong, from mild to severe, and some in which two things are. What
 * each fault should be called is reasoned from what it does to a heater, not from what the rules
 * look at.
 */
final class FaultCases {
  /** What follows when the low-pressure switch stops the heater again and again. */
  private static final Set<String> CUTS_OUT = Set.of("short-cycling");

  private final Stock stock;
  private final SplittableRandom random;
  private final List<Case> cases = new ArrayList<>();

  private FaultCases(Stock stock, long seed) {
    this.stock = stock;
    this.random = new SplittableRandom(seed);
  }

  static List<Case> of(Stock stock, long seed) {
    FaultCases book = new FaultCases(stock, seed);
    for (Severity severity : Severity.values()) {
      for (Fault fault : Fault.values()) {
        book.machine(fault, severity);
      }
      book.site(severity);
      book.probes(severity);
    }
    book.doubles();
    // After all others, so that these draw as they did.
    List.of(Severity.MODERATE, Severity.SEVERE).forEach(book::oddlyLogged);
    return book.cases;
  }

  private Draft draft(String name, Severity severity) {
    ProbeSet probes = random.nextBoolean() ? ProbeSet.FULL : ProbeSet.USUAL;
    return new Draft(
            name + " " + severity.name().toLowerCase(Locale.ROOT), stock, random.nextLong())
        .climate(Climate.of(17 + 9 * random.nextDouble(), 4, 0.75, 0.6, 0.5))
        .startC(25 + random.nextDouble())
        .probes(probes)
        .kit(HealthyCases.kit(random));
  }

  private void machine(Fault fault, Severity severity) {
    Draft draft = draft(words(fault), severity);
    while (fault == Fault.NO_DEFROST && !draft.thawsByReversedCycle()) {
      // The others rest in air too cold to thaw in.
      draft = draft(words(fault), severity);
    }
    draft.ill(ailment(fault, severity));
    switch (fault) {
      case NO_DEFROST -> draft.climate(cold(severity)).startC(27);
      case RUNS_PAST_SETPOINT -> draft.startC(27.6).volumeFactor(0.5);
      case SHORT_CYCLING, RESTART_DELAY_IGNORED -> draft.startC(26.9);
      // Its flow switch hangs closed, and only a flow meter or the pressures can tell.
      case FILTER_LOADING -> draft.probes(ProbeSet.FULL);
      case RECIRCULATION, NON_CONDENSABLES, OVERCHARGE, SCALED_CONDENSER ->
          draft.probes(ProbeSet.FULL);
      default -> {}
    }
    cases.add(draft.truth(truth(fault, severity)).build());
  }

  private static Ailment ailment(Fault fault, Severity severity) {
    return new Ailment(fault, severity, fault == Fault.WATER_STOPS ? 4 * 3600 : 0);
  }

  private static Climate cold(Severity severity) {
    return switch (severity) {
      case MILD -> Climate.of(9, 2, 0.7, 0.5, 0.2);
      case MODERATE -> Climate.of(6, 2, 0.85, 0.5, 0.2);
      case SEVERE -> Climate.of(3, 2, 0.95, 0.5, 0.1);
    };
  }

  /** What a fault should be called. */
  static Case.Truth truth(Fault fault, Severity severity) {
    return switch (fault) {
      case BYPASS_OPEN, STRAINER_BLOCKED ->
          truth(
              severity,
              Set.of("low-heater-flow"),
              Set.of("condenser-approach", "high-pressure", "low-cop", "low-heat", "no-flow"),
              Side.WATER);
      case FILTER_LOADING ->
          truth(
              severity,
              Set.of("falling-flow"),
              Set.of("low-heater-flow", "condenser-approach", "low-cop", "no-flow"),
              Side.WATER);
      case WATER_STOPS ->
          truth(
              severity,
              Set.of("no-flow"),
              Set.of("high-pressure", "low-heater-flow", "condenser-approach"),
              Side.WATER);
      case SCALED_CONDENSER ->
          truth(
              severity,
              Set.of("condenser-approach"),
              Set.of("high-pressure", "low-cop", "low-heat"),
              Side.WATER);
      case DIRTY_COIL, WEAK_FAN ->
          truth(
              severity,
              Set.of("evaporator-approach"),
              both(CUTS_OUT, Set.of("low-heat", "low-cop", "frosting")),
              Side.AIRFLOW);
      case RECIRCULATION ->
          truth(
              severity,
              Set.of("air-recirculation"),
              Set.of("low-heat", "low-cop", "evaporator-approach", "frosting"),
              Side.AIRFLOW);
      case UNDERCHARGE ->
          truth(
              severity,
              Set.of("low-charge"),
              both(
                  CUTS_OUT,
                  Set.of("low-heat", "low-cop", "evaporator-approach", "no-pressure-rise")),
              Side.REFRIGERANT);
      case OVERCHARGE, NON_CONDENSABLES ->
          truth(
              severity,
              Set.of("high-pressure", "condenser-approach"),
              Set.of("low-cop", "low-heat"),
              Side.REFRIGERANT);
      case VALVE_LEAK ->
          truth(
              severity,
              Set.of("low-heat", "no-pressure-rise"),
              Set.of("low-cop"),
              Side.REFRIGERANT);
      case NO_DEFROST ->
          truth(
              severity,
              Set.of("frosting"),
              both(CUTS_OUT, Set.of("evaporator-approach", "low-heat", "low-cop")),
              Side.AIRFLOW);
      case SHORT_CYCLING ->
          truth(severity, Set.of("short-cycling"), Set.of("restart-too-soon"), Side.CONTROL);
      case RESTART_DELAY_IGNORED ->
          truth(severity, Set.of("restart-too-soon"), Set.of("short-cycling"), Side.CONTROL);
      case RUNS_PAST_SETPOINT ->
          truth(severity, Set.of("runs-past-setpoint"), Set.of(), Side.CONTROL);
      case CONTACTOR_DEAD, CAPACITOR_DEAD ->
          truth(
              severity,
              Set.of("no-compressor"),
              Set.of("setpoint-unreachable", "overcurrent", "low-heat"),
              Side.ELECTRICAL);
      case LOW_VOLTAGE ->
          truth(severity, Set.of("voltage-range"), Set.of("overcurrent"), Side.ELECTRICAL);
      case HIGH_CURRENT ->
          truth(
              severity, Set.of("overcurrent", "low-cop"), Set.of("voltage-range"), Side.ELECTRICAL);
    };
  }

  private void site(Severity severity) {
    int grade = grade(severity);
    cases.add(
        draft("pump timer too short", severity)
            .startC(23.5)
            .pump(new SiteDesign.Spell(120, (8 - 2.2 * grade) * 3600))
            .truth(
                truth(
                    severity, Set.of("pump-hours"), Set.of("setpoint-unreachable"), Side.SCHEDULE))
            .build());
    cases.add(
        draft("windy pool without cover", severity)
            .startC(26)
            .uncovered()
            .shallow()
            .climate(Climate.of(15 - 2 * grade, 3, 0.5, 1.5 + 1.5 * grade, 0.9))
            .truth(truth(severity, Set.of("heat-loss"), Set.of("setpoint-unreachable"), Side.POOL))
            .build());
    cases.add(
        draft("pool too big", severity)
            .startC(23)
            .volumeFactor(3 + 3 * grade)
            .truth(
                truth(
                    severity,
                    Set.of("setpoint-unreachable"),
                    Set.of("heat-loss"),
                    Side.POOL,
                    Side.SCHEDULE))
            .build());
  }

  private static int grade(Severity severity) {
    return switch (severity) {
      case MILD -> 0;
      case MODERATE -> 1;
      case SEVERE -> 2;
    };
  }

  private void probes(Severity severity) {
    int grade = grade(severity);
    double hour = 3600;
    probe(
        "pair reads apart",
        severity,
        "probe-offset",
        trouble(Tap.WATER_OUT, ProbeTrouble.Kind.OFFSET, 0.5 + 0.6 * grade, 0),
        Set.of());
    cases.add(
        draft("probes swapped", severity)
            .trouble(trouble(Tap.WATER_IN, ProbeTrouble.Kind.SWAPPED, 1, 0))
            .trouble(trouble(Tap.WATER_OUT, ProbeTrouble.Kind.SWAPPED, 1, 0))
            .truth(measurement(severity, "probes-swapped", Set.of()))
            .build());
    probe(
        "outlet probe slips",
        severity,
        "probe-slipped",
        trouble(Tap.WATER_OUT, ProbeTrouble.Kind.SLIPPED, 0.3 + 0.3 * grade, 3 * hour),
        Set.of("probe-offset"));
    probe(
        "inlet probe stuck",
        severity,
        "probe-stuck",
        trouble(Tap.WATER_IN, ProbeTrouble.Kind.STUCK, 1, (9 - 3 * grade) * hour),
        Set.of("probe-offset"));
    probe(
        "outlet probe open",
        severity,
        "probe-fault",
        trouble(
            Tap.WATER_OUT, ProbeTrouble.Kind.OPEN, grade == 0 ? -127 : 850, (9 - 3 * grade) * hour),
        Set.of("data-gap"));
    probe(
        "power meter silent",
        severity,
        "data-gap",
        trouble(Tap.POWER, ProbeTrouble.Kind.SILENT, 5 + 40 * grade, 4 * hour),
        Set.of());
    cases.add(
        draft("clock steps", severity)
            .clockStep(4 * hour, Math.round(60e3 * Math.pow(8, grade)))
            .truth(measurement(severity, "clock-step", Set.of("data-gap")))
            .build());
  }

  private void probe(
      String name, Severity severity, String rule, ProbeTrouble trouble, Set<String> follows) {
    cases.add(
        draft(name, severity).trouble(trouble).truth(measurement(severity, rule, follows)).build());
  }

  private static ProbeTrouble trouble(
      Tap tap, ProbeTrouble.Kind kind, double level, double startS) {
    return new ProbeTrouble(tap, kind, level, startS);
  }

  private void doubles() {
    pair(Fault.BYPASS_OPEN, Fault.DIRTY_COIL, Side.WATER, Side.AIRFLOW);
    pair(Fault.UNDERCHARGE, Fault.SHORT_CYCLING, Side.REFRIGERANT, Side.CONTROL);
    pair(Fault.SCALED_CONDENSER, Fault.LOW_VOLTAGE, Side.WATER, Side.ELECTRICAL);
    pair(Fault.FILTER_LOADING, Fault.UNDERCHARGE, Side.WATER, Side.REFRIGERANT);
    pair(Fault.RECIRCULATION, Fault.HIGH_CURRENT, Side.AIRFLOW, Side.ELECTRICAL);
    pair(Fault.DIRTY_COIL, Fault.RESTART_DELAY_IGNORED, Side.AIRFLOW, Side.CONTROL);
  }

  /** The same faults where the pool pump is on the heater's meter, or changes alone are kept. */
  private void oddlyLogged(Severity severity) {
    for (Fault fault :
        List.of(
            Fault.BYPASS_OPEN,
            Fault.UNDERCHARGE,
            Fault.DIRTY_COIL,
            Fault.CONTACTOR_DEAD,
            Fault.SHORT_CYCLING)) {
      double startC = fault == Fault.SHORT_CYCLING ? 26.9 : 26;
      cases.add(
          draft(words(fault) + ", pump on the meter,", severity)
              .startC(startC)
              .pumpOnMeter()
              .ill(ailment(fault, severity))
              .truth(truth(fault, severity))
              .build());
      Draft kept = draft(words(fault) + ", changes kept,", severity);
      cases.add(
          kept.startC(startC)
              .kit(HealthyCases.kit(random).onChange())
              .ill(ailment(fault, severity))
              .truth(truth(fault, severity))
              .build());
    }
  }

  private void pair(Fault one, Fault other, Side side, Side otherSide) {
    Case.Truth first = truth(one, Severity.MODERATE);
    Case.Truth second = truth(other, Severity.MODERATE);
    Draft draft =
        draft(words(one) + " with " + words(other), Severity.MODERATE)
            .probes(ProbeSet.FULL)
            .ill(ailment(one, Severity.MODERATE))
            .ill(ailment(other, Severity.MODERATE));
    if (other == Fault.SHORT_CYCLING || other == Fault.RESTART_DELAY_IGNORED) {
      draft.startC(26.9);
    }
    cases.add(
        draft
            .truth(
                new Case.Truth(
                    Optional.of(Severity.MODERATE),
                    both(first.named(), second.named()),
                    both(first.follows(), second.follows()),
                    EnumSet.of(side, otherSide)))
            .build());
  }

  private static Set<String> both(Set<String> one, Set<String> other) {
    Set<String> all = new java.util.TreeSet<>(one);
    all.addAll(other);
    return all;
  }

  static Case.Truth measurement(Severity severity, String rule, Set<String> follows) {
    // A hole in one channel or a clock that was set leaves the machine's own verdict standing.
    return truth(severity, Set.of(rule), follows, Side.MEASUREMENT, Side.HEALTHY, Side.UNDECIDED);
  }

  private static Case.Truth truth(
      Severity severity, Set<String> named, Set<String> follows, Side... sides) {
    return new Case.Truth(Optional.of(severity), named, follows, Set.of(sides));
  }

  static String words(Fault fault) {
    return fault.name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
