package heatwake.dashboard.score;

import heatwake.dashboard.demo.plant.Plant;
import heatwake.dashboard.demo.plant.machine.CycleHeatPump;
import heatwake.dashboard.demo.plant.machine.Fluid;
import heatwake.dashboard.demo.plant.machine.HeaterDesign;
import heatwake.dashboard.demo.plant.machine.Nameplate;
import java.util.List;
import java.util.SplittableRandom;

/** Where the bench's heaters come from: random sizes, refrigerants, dynamics and quality. */
interface Stock {
  /**
   * A heater off the shelf.
   *
   * @param design as designed and printed on the plate
   * @param plate its plate
   * @param builder makes this very piece, which differs a little from the design
   */
  record Piece(HeaterDesign design, Nameplate plate, Plant.Builder builder) {}

  Piece draw(SplittableRandom random);

  /** The stock that rule writers see. */
  static Stock seen() {
    return random -> {
      HeaterDesign design = design(random);
      Nameplate plate = Nameplate.of(design, () -> new CycleHeatPump(design, 20, 0.009));
      HeaterDesign piece =
          design.piece(
              1 + 0.015 * random.nextGaussian(),
              1 + 0.01 * random.nextGaussian(),
              1 + 0.02 * random.nextGaussian());
      return new Piece(
          design, plate, (site, airC, moisture) -> new CycleHeatPump(piece, airC, moisture));
    };
  }

  /**
   * Another stock, built otherwise and run otherwise, that nobody looks at while writing rules:
   * used for the final check.
   */
  static Stock unseen() {
    return random -> {
      HeaterDesign design = otherDesign(random);
      MappedHeatPump.Temper temper =
          new MappedHeatPump.Temper(
              between(random, 0.017, 0.026),
              between(random, 0.44, 0.54),
              between(random, 8.5, 13.5),
              between(random, 4.5, 8.5),
              between(random, 10, 40),
              between(random, 30, 90),
              between(random, 0, 1.5));
      Nameplate plate = Nameplate.of(design, () -> new MappedHeatPump(design, temper, 20, 0.009));
      return new Piece(
          design,
          plate,
          (site, airC, moisture) -> new MappedHeatPump(design, temper, airC, moisture));
    };
  }

  private static HeaterDesign otherDesign(SplittableRandom random) {
    double heatW = 6e3 * Math.pow(5, random.nextDouble());
    HeaterDesign.Choice usual = HeaterDesign.Choice.usual(heatW);
    boolean threePhase = heatW > 15e3;
    return HeaterDesign.sized(
        List.of(Fluid.values()).get(random.nextInt(Fluid.values().length)),
        new HeaterDesign.Choice(
            heatW,
            usual.evaporatingC(),
            usual.condensingC(),
            between(random, 2, 4.5),
            usual.airKgPerSPerW(),
            between(random, 4, 9),
            between(random, 2.5, 8)),
        new HeaterDesign.Compressor(0, 0.03, 0.6, 2.8, random.nextDouble() < 0.4),
        new HeaterDesign.Sequence(
            between(random, 5, 75),
            between(random, 2, 25),
            between(random, 0, 90),
            Math.rint(between(random, 2, 8)) * 60,
            between(random, 0.4, 1.8),
            between(random, 60, 150),
            between(random, 90, 300),
            random.nextBoolean() ? HeaterDesign.Defrost.REVERSED_CYCLE : HeaterDesign.Defrost.AIR,
            between(random, 1500, 4000)),
        new HeaterDesign.Electric(
            threePhase ? 400 : 230,
            threePhase ? 3 : 1,
            between(random, 0.85, 0.99),
            between(random, 0.006, 0.014) * heatW,
            between(random, 2, 25),
            random.nextBoolean() ? 60 : 0));
  }

  private static HeaterDesign design(SplittableRandom random) {
    double heatW = 5e3 * Math.pow(8, random.nextDouble());
    Fluid fluid = List.of(Fluid.values()).get(random.nextInt(Fluid.values().length));
    boolean inverter = random.nextDouble() < 0.25;
    HeaterDesign.Choice choice =
        new HeaterDesign.Choice(
            heatW,
            between(random, 12.5, 16.5),
            between(random, 35, 38.5),
            between(random, 2.2, 3.6),
            between(random, 7.5e-5, 10e-5),
            between(random, 4, 8),
            between(random, 3, 6));
    HeaterDesign.Compressor like =
        new HeaterDesign.Compressor(
            0, between(random, 0.02, 0.045), between(random, 0.53, 0.64), 2.8, inverter);
    boolean threePhase = heatW > 18e3;
    return HeaterDesign.sized(
        fluid,
        choice,
        like,
        new HeaterDesign.Sequence(
            between(random, 20, 45),
            between(random, 3, 12),
            between(random, 20, 60),
            Math.rint(between(random, 3, 6)) * 60,
            between(random, 0.6, 1.2),
            between(random, 45, 100),
            between(random, 45, 150),
            random.nextDouble() < 0.6
                ? HeaterDesign.Defrost.REVERSED_CYCLE
                : HeaterDesign.Defrost.AIR,
            between(random, 1800, 3000)),
        new HeaterDesign.Electric(
            threePhase ? 400 : 230,
            threePhase ? 3 : 1,
            between(random, 0.9, 0.98),
            between(random, 0.007, 0.012) * heatW,
            between(random, 4, 15),
            random.nextDouble() < 0.3 ? 40 : 0));
  }

  private static double between(SplittableRandom random, double low, double high) {
    return low + random.nextDouble() * (high - low);
  }
}
