package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.refrigerant.Saturation;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What water warmer than the coil does to the high side by itself: once refrigerant is moved into
 * the condenser, it stands there at no less than saturation at the water's temperature, whether or
 * not the compressor lifts it any further.
 */
final class WaterLift {
  /** The part of the expected heat that a compressor without lift does not give; ours. */
  private static final double HALF_OF_THE_HEAT = 0.5;

  private WaterLift() {}

  /**
   * The pressure that the water alone accounts for, gauge Pa, where the heater pumps nothing: the
   * low side is not pulled down, and the water takes up less than the compressor draws, and beyond
   * doubt less than half of what is expected (a heat pump gives off its own work and what it pumps:
   * first law). Empty where that is not so or not known.
   *
   * @param fromMs begin of the stretch in which the pressures are looked at
   * @param toMs its end
   * @param stopMs end of the run of the compressor
   * @param leastShare change of a pressure that counts, of its absolute value
   */
  static OptionalDouble pa(
      Evidence evidence,
      OptionalDouble restingSuctionPa,
      long fromMs,
      long toMs,
      long stopMs,
      double leastShare) {
    Timeline timeline = evidence.timeline();
    OptionalDouble waterK = timeline.meanBetween(Channel.WATER_IN, fromMs, toMs);
    OptionalDouble suctionPa = timeline.meanBetween(Channel.PRESSURE_SUCTION, fromMs, toMs);
    Optional<Saturation> lines =
        evidence.recording().rig().heater().refrigerant().map(Saturation::of);
    if (waterK.isEmpty()
        || suctionPa.isEmpty()
        || restingSuctionPa.isEmpty()
        || lines.isEmpty()
        || !givesNoHeat(evidence, fromMs, stopMs)) {
      return OptionalDouble.empty();
    }
    AbsolutePressure atmosphere =
        Atmosphere.standard(evidence.recording().rig().site().altitudeM());
    double restingPa = restingSuctionPa.getAsDouble() + atmosphere.pa();
    double pulledDown = 1 - (suctionPa.getAsDouble() + atmosphere.pa()) / restingPa;
    // A blend's dew point is the lower of its two: all of what is above it counts as lift.
    return pulledDown < leastShare
        ? OptionalDouble.of(lines.get().dewPressure(waterK.getAsDouble()).pa() - atmosphere.pa())
        : OptionalDouble.empty();
  }

  private static boolean givesNoHeat(Evidence evidence, long fromMs, long stopMs) {
    for (Duty duty : evidence.duty()) {
      if (duty.endMs() > fromMs && duty.startMs() < stopMs) {
        Optional<Estimate> heat = duty.of(DutyFigure.HEAT);
        Optional<Estimate> power = duty.of(DutyFigure.POWER);
        return heat.isPresent()
            && power.isPresent()
            && heat.get().value() < power.get().value()
            && duty.of(DutyFigure.HEAT_RATIO)
                .filter(ratio -> Doubt.below(ratio, HALF_OF_THE_HEAT))
                .isPresent();
      }
    }
    return false;
  }
}
