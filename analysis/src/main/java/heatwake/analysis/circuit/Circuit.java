package heatwake.analysis.circuit;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.refrigerant.Refrigerant;
import heatwake.analysis.refrigerant.Saturation;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Temperatures of the refrigerant over a run, from gauge pressures, the altitude and the
 * refrigerant's saturation lines.
 *
 * <p>Condensing and evaporating temperature are dew points, as EN 12900 and makers' tables have
 * them (from memory); superheat counts from the dew line, subcooling from the bubble line. For
 * refrigerants without glide all are one.
 *
 * @param condensingK dew temperature of the high side
 * @param evaporatingK dew temperature of the low side
 * @param superheatK suction line above evaporating temperature
 * @param subcoolingK bubble temperature of the high side above the liquid line
 * @param missing what could not be had and what would give it, one sentence each
 */
@SuppressWarnings("ArrayRecordComponent") // large arrays, shared on purpose
public record Circuit(
    double[] condensingK,
    double[] evaporatingK,
    double[] superheatK,
    double[] subcoolingK,
    List<String> missing) {

  /**
   * Reads the circuit; arrays are all NaN where a probe or the refrigerant is not known.
   *
   * @param rig the one of the timeline's recording
   */
  public static Circuit of(Timeline timeline, Rig rig) {
    return timeline.once(Circuit.class, all -> read(all, rig));
  }

  private static Circuit read(Timeline timeline, Rig rig) {
    boolean high = timeline.has(Channel.PRESSURE_DISCHARGE);
    boolean low = timeline.has(Channel.PRESSURE_SUCTION);
    Optional<Refrigerant> refrigerant = rig.heater().refrigerant();
    List<String> missing = missing(high, low, refrigerant.isPresent());
    double[] nothing = Timeline.unknown(timeline.size());
    if (refrigerant.isEmpty()) {
      return new Circuit(nothing, nothing, nothing, nothing, missing);
    }
    Saturation saturation = Saturation.of(refrigerant.get());
    AbsolutePressure air = Atmosphere.standard(rig.site().altitudeM());
    double[] highPa = timeline.of(Channel.PRESSURE_DISCHARGE);
    double[] lowPa = timeline.of(Channel.PRESSURE_SUCTION);
    double[] condensing = high ? saturation.dewTemperaturesK(highPa, air) : nothing;
    double[] evaporating = low ? saturation.dewTemperaturesK(lowPa, air) : nothing;
    boolean liquid = high && timeline.has(Channel.TEMP_LIQUID);
    boolean suction = low && timeline.has(Channel.TEMP_SUCTION);
    return new Circuit(
        condensing,
        evaporating,
        suction ? difference(timeline.of(Channel.TEMP_SUCTION), evaporating) : nothing,
        liquid
            ? difference(
                saturation.bubbleTemperaturesK(highPa, air), timeline.of(Channel.TEMP_LIQUID))
            : nothing,
        missing);
  }

  private static double[] difference(double[] minuend, double[] subtrahend) {
    double[] difference = new double[minuend.length];
    for (int i = 0; i < difference.length; i++) {
      difference[i] = minuend[i] - subtrahend[i];
    }
    return difference;
  }

  private static List<String> missing(boolean high, boolean low, boolean refrigerant) {
    List<String> missing = new ArrayList<>();
    if ((high || low) && !refrigerant) {
      missing.add(
          "condensing and evaporating temperature: the refrigerant is not stated; add refrigerant"
              + " to [heater] as its nameplate says");
    }
    if (!high || !low) {
      missing.add(
          "refrigerant side: "
              + (high ? "pressure-suction is" : low ? "pressure-discharge is" : "pressures are")
              + " not recorded; only a certified refrigerant handler may fit gauges");
    }
    return missing;
  }
}
