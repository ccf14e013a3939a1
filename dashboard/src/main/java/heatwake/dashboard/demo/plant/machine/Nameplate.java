package heatwake.dashboard.demo.plant.machine;

import java.util.List;
import java.util.function.Supplier;

/**
 * What the maker prints on the heater.
 *
 * @param tests rating points, rounded as on a plate
 * @param flowMinM3PerS least water flow
 * @param flowMaxM3PerS greatest water flow
 * @param currentMaxA greatest line current
 * @param breakerA breaker of the circuit
 */
public record Nameplate(
    List<RatingTest> tests,
    double flowMinM3PerS,
    double flowMaxM3PerS,
    double currentMaxA,
    double breakerA) {

  private static final double LEAST_FLOW = 0.6;
  private static final double MOST_FLOW = 1.7;
  private static final double CURRENT_RESERVE = 1.15;
  private static final double BREAKER_RESERVE = 1.3;
  private static final double[] BREAKERS = {10, 13, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125};

  /** Tests a healthy heater and prints its plate. */
  public static Nameplate of(HeaterDesign design, Supplier<HeatPump> fresh) {
    double hardestW = 0;
    for (double airC : new double[] {38, 20, 4}) {
      RatingTest test = RatingTest.run(fresh.get(), design, airC, 0.6, 32);
      hardestW = Math.max(hardestW, test.powerW());
    }
    HeaterDesign.Electric electric = design.electric();
    double current =
        CURRENT_RESERVE
            * electric.current(hardestW, 0.95 * electric.nominalV(), electric.powerFactor());
    return new Nameplate(
        List.of(
            RatingTest.run(fresh.get(), design, 27, 0.8, 27).rounded(),
            RatingTest.run(fresh.get(), design, 15, 0.7, 27).rounded(),
            RatingTest.run(fresh.get(), design, 10, 0.63, 27).rounded()),
        litres(design.waterM3PerS() * LEAST_FLOW),
        litres(design.waterM3PerS() * MOST_FLOW),
        Math.ceil(current * 2) / 2,
        breaker(current * BREAKER_RESERVE));
  }

  private static double litres(double m3PerS) {
    return Math.rint(m3PerS * 6e4) / 6e4;
  }

  private static double breaker(double leastA) {
    for (double size : BREAKERS) {
      if (size >= leastA) {
        return size;
      }
    }
    return BREAKERS[BREAKERS.length - 1];
  }
}
