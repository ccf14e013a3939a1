package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.refrigerant.Saturation;
import heatwake.analysis.site.Rig;
import java.util.OptionalDouble;

/** From which pressure on the high side comes near the switch that stops the compressor. */
public final class HighSideLimit {
  /** Near the nameplate's greatest pressure: this part of it; ours. */
  private static final double NEAR_SHARE = 0.9;

  /**
   * Without a nameplate limit: condensing above this, K. High-pressure switches of pool heaters
   * open around 65 Cel (R-410A: about 4.2 MPa); common practice.
   */
  private static final double HOT_CONDENSING_K = 273.15 + 60;

  private HighSideLimit() {}

  /**
   * The limit of a heater, gauge Pa; empty if neither the nameplate's greatest pressure nor the
   * refrigerant is stated.
   */
  public static OptionalDouble pa(Rig rig) {
    OptionalDouble most = rig.heater().pressureMaxPa();
    if (most.isPresent()) {
      return OptionalDouble.of(NEAR_SHARE * most.getAsDouble());
    }
    return rig.heater()
        .refrigerant()
        .map(
            refrigerant ->
                OptionalDouble.of(
                    Saturation.of(refrigerant)
                        .dewPressure(HOT_CONDENSING_K)
                        .gauge(Atmosphere.standard(rig.site().altitudeM()))
                        .pa()))
        .orElseGet(OptionalDouble::empty);
  }
}
