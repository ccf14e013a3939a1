package heatwake.analysis.site;

import heatwake.analysis.quantity.Channel;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One site as it is clipped up today, as far as the analysis needs to know it. Where readings come
 * from is not its business.
 *
 * @param site name and altitude
 * @param pool what is known of the pool; {@link Pool#UNKNOWN} where the rig says nothing
 * @param tariff price of electricity, if stated
 * @param pumpCurve pump curve points in order of rising flow; empty where not stated
 * @param heater nameplate; {@link Heater#UNKNOWN} where the rig says nothing
 * @param probes what is clipped to each channel
 */
public record Rig(
    Site site,
    Pool pool,
    Optional<Tariff> tariff,
    List<PumpPoint> pumpCurve,
    Heater heater,
    Map<Channel, Probe> probes) {

  public Rig {
    pumpCurve = List.copyOf(pumpCurve);
    probes = Map.copyOf(probes);
  }
}
