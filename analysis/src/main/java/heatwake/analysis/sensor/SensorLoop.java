package heatwake.analysis.sensor;

import heatwake.analysis.quantity.Quantity;

/**
 * A kind of raw loop with its constants. Immutable; {@link #begin} gives the conversion of one
 * probe, which for counters remembers the last count.
 *
 * <pre>{@code
 * SensorLoop loop = Rtd.pt1000();
 * Conversion probe = loop.begin();
 * Sensed sensed = probe.next(rawUnit.toSi(number), timeMs);
 * }</pre>
 */
public sealed interface SensorLoop
    permits Rtd,
        NtcBeta,
        NtcSteinhartHart,
        Thermocouple,
        CurrentLoop,
        DigitalThermometer,
        PulseRate,
        RegisterTotal {

  /**
   * The quantity of the raw number, given to the conversion in SI: resistance in ohm, voltage in
   * volt, current in ampere; counts are a {@link Quantity#RATIO} (unit 1).
   */
  Quantity raw();

  /** The quantity that comes out, in SI. */
  Quantity measured();

  /** A conversion for one probe, with nothing remembered yet. */
  Conversion begin();
}
