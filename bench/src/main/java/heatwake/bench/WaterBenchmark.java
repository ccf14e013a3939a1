package heatwake.bench;

import com.hummeling.if97.IF97;
import com.hummeling.if97.OutOfRangeException;
import heatwake.analysis.water.PoolWater;
import heatwake.analysis.water.Water;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;

/** Nanoseconds for one enthalpy, one density, one heat of water, beside an IF97 library's. */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class WaterBenchmark {
  private static final int READINGS = 4096;
  private static final double PRESSURE_PA = 150e3;

  private final double[] inK = new double[READINGS];
  private final double[] outK = new double[READINGS];
  private final double[] flowM3PerS = new double[READINGS];
  private final PoolWater water = PoolWater.of(0.0035, PRESSURE_PA);
  private final IF97 library = new IF97(IF97.UnitSystem.SI);

  /** Readings of a pool between 5 and 40 Cel. */
  @Setup
  public void readings() {
    Random random = new Random(7);
    for (int i = 0; i < READINGS; i++) {
      inK[i] = 278.15 + 35 * random.nextDouble();
      outK[i] = inK[i] + 0.5 + 9.5 * random.nextDouble();
      flowM3PerS[i] = 1e-3 + 3e-3 * random.nextDouble();
    }
  }

  @Benchmark
  @OperationsPerInvocation(READINGS)
  public double enthalpyByTheEquations() {
    double sum = 0;
    for (double tK : inK) {
      sum += Water.enthalpyJPerKg(tK, PRESSURE_PA);
    }
    return sum;
  }

  @Benchmark
  @OperationsPerInvocation(READINGS)
  public double enthalpyOfPoolWater() {
    double sum = 0;
    for (double tK : inK) {
      sum += water.enthalpyJPerKg(tK);
    }
    return sum;
  }

  @Benchmark
  @OperationsPerInvocation(READINGS)
  public double enthalpyByTheLibrary() throws OutOfRangeException {
    double sum = 0;
    for (double tK : inK) {
      sum += library.specificEnthalpyPT(PRESSURE_PA, tK);
    }
    return sum;
  }

  @Benchmark
  @OperationsPerInvocation(READINGS)
  public double densityOfPoolWater() {
    double sum = 0;
    for (double tK : inK) {
      sum += water.densityKgPerM3(tK);
    }
    return sum;
  }

  @Benchmark
  @OperationsPerInvocation(READINGS)
  public double densityByTheLibrary() throws OutOfRangeException {
    double sum = 0;
    for (double tK : inK) {
      sum += library.densityPT(PRESSURE_PA, tK);
    }
    return sum;
  }

  /** Density at the flow sensor and two enthalpies for each instant. */
  @Benchmark
  @OperationsPerInvocation(READINGS)
  public double[] heatOfARun() {
    return water.heatW(flowM3PerS, inK, inK, outK);
  }
}
