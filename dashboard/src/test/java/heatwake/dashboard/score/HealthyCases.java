package heatwake.dashboard.score;

import heatwake.dashboard.demo.plant.SiteDesign;
import heatwake.dashboard.demo.plant.air.Climate;
import heatwake.dashboard.demo.plant.sensor.Kit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/** Runs in which nothing is wrong: every weather, every probe set, every way of sampling. */
final class HealthyCases {
  private HealthyCases() {}

  static List<Case> of(Stock stock, long seed) {
    List<Case> cases = new ArrayList<>();
    SplittableRandom random = new SplittableRandom(seed);
    Map<String, Climate> climates = new LinkedHashMap<>();
    climates.put("warm and humid", Climate.of(26, 3, 0.85, 0.5, 0.4));
    climates.put("hot and dry", Climate.of(31, 6, 0.35, 1.0, 0.9));
    climates.put("mild", Climate.of(20, 5, 0.65, 0.8, 0.6));
    climates.put("cool", Climate.of(13, 4, 0.75, 1.0, 0.3));
    climates.put("cool and dry", Climate.of(12, 4, 0.45, 1.0, 0.8));
    climates.put("cold and damp, with defrosts", Climate.of(6, 3, 0.9, 0.8, 0.2));
    climates.put("frosty and dry", Climate.of(3, 3, 0.5, 0.6, 0.8));
    climates.put("fog", Climate.of(15, 2, 0.98, 0.3, 0));
    climates.forEach(
        (weather, climate) -> {
          for (int i = 0; i < 2; i++) {
            cases.add(
                suited(climate, "healthy, " + weather, stock, random)
                    .climate(climate)
                    .startC(26.6 + 0.6 * random.nextDouble())
                    .probes(i == 0 ? ProbeSet.FULL : ProbeSet.USUAL)
                    .kit(kit(random))
                    .build());
          }
        });
    for (ProbeSet probes : ProbeSet.values()) {
      for (int i = 0; i < 2; i++) {
        cases.add(
            draft("healthy, sparse", stock, random)
                .climate(i == 0 ? climates.get("mild") : climates.get("warm and humid"))
                .probes(probes)
                .kit(kit(random))
                .build());
      }
    }
    for (double intervalS : new double[] {1, 2, 10, 30, 60}) {
      cases.add(
          draft("healthy, sampling", stock, random)
              .probes(ProbeSet.USUAL)
              .kit(Kit.good(intervalS))
              .build());
    }
    cases.add(
        draft("healthy, two hours at start-up", stock, random)
            .hours(2)
            .startC(22)
            .volumeFactor(0.35)
            .kit(Kit.good(1))
            .build());
    cases.add(
        draft("healthy, pump rests at night", stock, random)
            .pump(new SiteDesign.Spell(120, 5 * 3600), new SiteDesign.Spell(11 * 3600, 1e9))
            .startC(27.1)
            .volumeFactor(0.6)
            .build());
    cases.add(draft("healthy, at its set temperature", stock, random).startC(28.3).build());
    cases.add(
        draft("healthy, lost readings", stock, random)
            .kit(new Kit(2, 0.5, 0.03, 0.15, 30, 0.03, 5, 0))
            .build());
    // After all others, so that these draw as they did.
    for (ProbeSet probes : List.of(ProbeSet.USUAL, ProbeSet.WATER_SIDE, ProbeSet.TWO_AND_POWER)) {
      cases.add(
          draft("healthy, pool pump on the heater's meter", stock, random)
              .probes(probes)
              .kit(kit(random))
              .pump(new SiteDesign.Spell(120, 9 * 3600), new SiteDesign.Spell(11 * 3600, 1e9))
              .pumpOnMeter()
              .build());
    }
    for (ProbeSet probes : List.of(ProbeSet.FULL, ProbeSet.USUAL, ProbeSet.TWO_AND_POWER)) {
      cases.add(
          draft("healthy, changes alone are kept", stock, random)
              .startC(26.6 + 0.6 * random.nextDouble())
              .probes(probes)
              .kit(kit(random).onChange())
              .build());
    }
    return cases;
  }

  static Kit kit(SplittableRandom random) {
    double[] intervals = {1, 2, 5, 5, 10, 10, 30};
    double[] water = {0.05, 0.1, 0.1, 0.2};
    return new Kit(
        intervals[random.nextInt(intervals.length)],
        0.5 * random.nextDouble(),
        random.nextDouble() < 0.3 ? 0.01 : 0,
        water[random.nextInt(water.length)],
        6 + 30 * random.nextDouble(),
        0.01 + 0.02 * random.nextDouble(),
        random.nextDouble() < 0.3 ? 6 : 1,
        0);
  }

  /**
   * A heater that thaws in air rests when it is too cold for that; nobody buys it for such a place.
   */
  private static Draft suited(Climate climate, String name, Stock stock, SplittableRandom random) {
    Draft draft = draft(name, stock, random);
    while (climate.meanC() < 10 && !draft.thawsByReversedCycle()) {
      draft = draft(name, stock, random);
    }
    return draft;
  }

  private static Draft draft(String name, Stock stock, SplittableRandom random) {
    return new Draft(name, stock, random.nextLong());
  }
}
