package heatwake.bench;

import com.hummeling.if97.IF97;
import com.hummeling.if97.OutOfRangeException;
import heatwake.analysis.air.MoistAir;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.GaugePressure;
import heatwake.analysis.refrigerant.Refrigerant;
import heatwake.analysis.refrigerant.Saturation;
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

/**
 * Nanoseconds for one saturation temperature: of refrigerants, and of water beside an IF97
 * library's.
 */
@State(Scope.Thread)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.NANOSECONDS)
@Warmup(iterations = 3, time = 1)
@Measurement(iterations = 5, time = 1)
@Fork(1)
public class SaturationBenchmark {
  private static final int READINGS = 4096;

  private final double[] gaugePa = new double[READINGS];
  private final double[] waterPa = new double[READINGS];
  private final double[] airK = new double[READINGS];
  private final Saturation saturation = Saturation.of(Refrigerant.R410A);
  private final AbsolutePressure atmosphere = AbsolutePressure.STANDARD_ATMOSPHERE;
  private final IF97 library = new IF97(IF97.UnitSystem.SI);

  /** High and low sides of a heater, water between 30 and 200 Cel, mild air. */
  @Setup
  public void readings() {
    Random random = new Random(7);
    for (int i = 0; i < READINGS; i++) {
      gaugePa[i] = 0.5e6 + 3e6 * random.nextDouble();
      waterPa[i] = 5e3 + 1.5e6 * random.nextDouble();
      airK[i] = 273.15 + 35 * random.nextDouble();
    }
  }

  @Benchmark
  @OperationsPerInvocation(READINGS)
  public double[] refrigerantOfARun() {
    return saturation.dewTemperaturesK(gaugePa, atmosphere);
  }

  @Benchmark
  @OperationsPerInvocation(READINGS)
  public double refrigerantOneByOne() {
    double sum = 0;
    for (double pa : gaugePa) {
      sum += saturation.dewTemperatureK(new GaugePressure(pa).absolute(atmosphere));
    }
    return sum;
  }

  @Benchmark
  @OperationsPerInvocation(READINGS)
  public double water() {
    double sum = 0;
    for (double pa : waterPa) {
      sum += Water.saturationTemperatureK(pa);
    }
    return sum;
  }

  @Benchmark
  @OperationsPerInvocation(READINGS)
  public double waterByTheLibrary() throws OutOfRangeException {
    double sum = 0;
    for (double pa : waterPa) {
      sum += library.saturationTemperatureP(pa);
    }
    return sum;
  }

  @Benchmark
  @OperationsPerInvocation(READINGS)
  public double wetBulb() {
    double sum = 0;
    for (double tK : airK) {
      sum += MoistAir.of(tK, 0.6, atmosphere).wetBulbK();
    }
    return sum;
  }
}
