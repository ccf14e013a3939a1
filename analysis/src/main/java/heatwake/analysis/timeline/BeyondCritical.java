package heatwake.analysis.timeline;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.refrigerant.Saturation;
import heatwake.analysis.series.Series;
import heatwake.analysis.site.Heater;
import java.util.BitSet;
import java.util.OptionalDouble;

/**
 * Refrigerant pressures that no heater reaches: far above the upper end of the saturation line,
 * which ends near the critical point. Pressure switches open well below it (some 65 °C condensing:
 * common practice), and heat pumps for pools do not run beyond it.
 */
public final class BeyondCritical {
  /** So far above the end of the line a gauge's error no longer explains a reading; ours. */
  private static final double BEYOND = 1.2;

  private BeyondCritical() {}

  /** The greatest gauge pressure that is believed, Pa; empty where the refrigerant is not known. */
  public static OptionalDouble mostPa(Heater heater) {
    return heater.refrigerant().map(Saturation::of).stream()
        .mapToDouble(one -> BEYOND * one.bubblePressure(one.highestK()).pa())
        .findFirst();
  }

  /** The readings of a series beyond it, by their number. */
  public static BitSet in(Series series, Heater heater) {
    BitSet beyond = new BitSet();
    boolean isOfRefrigerant =
        series.channel() == Channel.PRESSURE_DISCHARGE
            || series.channel() == Channel.PRESSURE_SUCTION;
    OptionalDouble most = isOfRefrigerant ? mostPa(heater) : OptionalDouble.empty();
    if (most.isPresent()) {
      for (int r = 0; r < series.size(); r++) {
        if (series.value(r) > most.getAsDouble()) {
          beyond.set(r);
        }
      }
    }
    return beyond;
  }
}
