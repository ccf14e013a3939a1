package heatwake.analysis.timeline;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.sensor.DigitalThermometer;
import heatwake.analysis.series.Series;
import java.util.BitSet;

/**
 * A 1-Wire thermometer says 85 Cel after power-on, before its first conversion (data sheet), and
 * goes on saying so where its supply is too weak to convert. The value is told from an honest one
 * by the jump from or to another within one reading.
 */
public final class PowerOnValue {
  private static final double WITHIN_K = 1e-3;

  /** No pipe, air or pool changes by so much from one reading to the next, K; ours. */
  private static final double JUMP_K = 8;

  private PowerOnValue() {}

  /** Which readings of a series are it: all of a stretch that is entered or left by a jump. */
  public static BitSet in(Series series) {
    BitSet found = new BitSet();
    boolean canBe85 = series.channel() == Channel.TEMP_DISCHARGE;
    if (series.channel().quantity() != Quantity.TEMPERATURE || canBe85) {
      return found;
    }
    for (int from = 0; from < series.size(); from++) {
      if (!isIt(series, from)) {
        continue;
      }
      int to = from + 1;
      while (to < series.size() && isIt(series, to)) {
        to++;
      }
      if (isFar(series, from - 1) || isFar(series, to)) {
        found.set(from, to);
      }
      from = to;
    }
    return found;
  }

  private static boolean isIt(Series series, int r) {
    return Math.abs(series.value(r) - DigitalThermometer.POWER_ON_K) < WITHIN_K;
  }

  private static boolean isFar(Series series, int r) {
    return r >= 0
        && r < series.size()
        && Math.abs(series.value(r) - DigitalThermometer.POWER_ON_K) > JUMP_K;
  }
}
