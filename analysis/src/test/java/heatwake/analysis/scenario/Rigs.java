package heatwake.analysis.scenario;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Measure;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.refrigerant.Refrigerant;
import heatwake.analysis.site.CompressorSpeed;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Pool;
import heatwake.analysis.site.Probe;
import heatwake.analysis.site.Rating;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.analysis.site.Rig;
import heatwake.analysis.site.Site;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Rigs for tests. */
public final class Rigs {
  private Rigs() {}

  /** A heater of 16.5 kW with a full nameplate and ordinary probes on every channel. */
  public static Rig typical() {
    return new Rig(
        new Site("Heron Lane", 0),
        new Pool(
            OptionalDouble.of(62), OptionalDouble.of(38), false, 0, OptionalDouble.of(cel(28))),
        Optional.empty(),
        List.of(),
        typicalHeater(),
        probes());
  }

  /** The probes of {@link #typical} on a site of which nothing else is known. */
  public static Rig bare() {
    return new Rig(
        new Site("Heron Lane", 0),
        Pool.UNKNOWN,
        Optional.empty(),
        List.of(),
        Heater.UNKNOWN,
        probes());
  }

  public static Rig withHeater(Heater heater) {
    Rig typical = typical();
    return new Rig(
        typical.site(),
        typical.pool(),
        typical.tariff(),
        typical.pumpCurve(),
        heater,
        typical.probes());
  }

  /** A heater of which nothing is stated but its breaker, 20 A. */
  public static Rig breakerOnly() {
    return withHeater(
        new Heater(
            "unit 1",
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.of(20),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Optional.empty(),
            List.of()));
  }

  /** The typical heater, of which the plate says how its compressor is driven. */
  public static Rig withSpeed(CompressorSpeed speed) {
    Heater typical = typicalHeater();
    return withHeater(
        new Heater(
            typical.label(),
            typical.refrigerant(),
            typical.flowMinM3PerS(),
            typical.flowMaxM3PerS(),
            typical.voltageV(),
            typical.currentMaxA(),
            typical.breakerA(),
            typical.restartDelayS(),
            typical.pressureMaxPa(),
            Optional.of(speed),
            typical.ratings()));
  }

  public static Rig withPool(Pool pool) {
    Rig typical = typical();
    return new Rig(
        typical.site(),
        pool,
        typical.tariff(),
        typical.pumpCurve(),
        typical.heater(),
        typical.probes());
  }

  public static Heater typicalHeater() {
    return new Heater(
        "unit 1",
        Optional.of(Refrigerant.R410A),
        OptionalDouble.of(Measure.parse(Quantity.FLOW, "90 L/min")),
        OptionalDouble.of(Measure.parse(Quantity.FLOW, "200 L/min")),
        OptionalDouble.of(230),
        OptionalDouble.of(16),
        OptionalDouble.of(20),
        OptionalDouble.of(240),
        OptionalDouble.empty(),
        Optional.empty(),
        List.of(
            new Rating(cel(27), OptionalDouble.of(0.8), cel(27), 16_500, OptionalDouble.of(2750)),
            new Rating(cel(15), OptionalDouble.of(0.7), cel(26), 11_500, OptionalDouble.of(2500))));
  }

  /** A rig like another with a probe of another uncertainty. */
  public static Rig withProbe(Rig rig, Channel channel, ReadingUncertainty uncertainty) {
    Map<Channel, Probe> probes = new EnumMap<>(rig.probes());
    probes.put(channel, new Probe(uncertainty, OptionalDouble.empty()));
    return new Rig(rig.site(), rig.pool(), rig.tariff(), rig.pumpCurve(), rig.heater(), probes);
  }

  private static Map<Channel, Probe> probes() {
    Map<Channel, Probe> probes = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      probes.put(channel, new Probe(uncertainty(channel), OptionalDouble.of(1)));
    }
    return probes;
  }

  private static ReadingUncertainty uncertainty(Channel channel) {
    return switch (channel.quantity()) {
      case TEMPERATURE -> new ReadingUncertainty.Absolute(0.1);
      case PRESSURE -> new ReadingUncertainty.Absolute(10e3);
      case VOLTAGE, CURRENT, POWER -> new ReadingUncertainty.Relative(0.01);
      case FLOW -> new ReadingUncertainty.Relative(0.02);
      default -> new ReadingUncertainty.Unstated();
    };
  }

  private static double cel(double cel) {
    return cel + 273.15;
  }
}
