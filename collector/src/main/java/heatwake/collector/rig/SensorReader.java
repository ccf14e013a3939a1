package heatwake.collector.rig;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Measure;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.sensor.CountRegister;
import heatwake.analysis.sensor.CurrentLoop;
import heatwake.analysis.sensor.DigitalThermometer;
import heatwake.analysis.sensor.NtcBeta;
import heatwake.analysis.sensor.NtcSteinhartHart;
import heatwake.analysis.sensor.PulseRate;
import heatwake.analysis.sensor.RegisterTotal;
import heatwake.analysis.sensor.Rtd;
import heatwake.analysis.sensor.SensorLoop;
import heatwake.analysis.sensor.Thermocouple;
import heatwake.analysis.sensor.ThermocoupleType;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads what a rig says of a sensor whose raw value is sent: its kind and its constants. */
final class SensorReader {
  private static final double ICE_POINT_K = 273.15;

  /** Kinds of sensor, and the keys that go with each. */
  private static final Map<String, List<String>> KEYS =
      Map.of(
          "pt100", List.of("lead"),
          "pt1000", List.of("lead"),
          "ntc", List.of("r25", "beta", "steinhart-hart"),
          "thermocouple-k", List.of("cold-junction"),
          "thermocouple-t", List.of("cold-junction"),
          "4-20ma", List.of("at-4ma", "at-20ma"),
          "1-wire", List.of(),
          "counter", List.of("per-count", "roll-over"));

  private SensorReader() {}

  /** Every key of a sensor, beside {@code sensor} itself. */
  static List<String> keys() {
    return KEYS.values().stream().flatMap(List::stream).distinct().sorted().toList();
  }

  static Optional<SensorLoop> sensor(TomlTable probe, Channel channel) {
    Optional<String> kind = probe.text("sensor");
    List<String> allowed = kind.map(one -> allowed(probe, one)).orElse(List.of());
    for (String key : keys()) {
      if (probe.has(key) && !allowed.contains(key)) {
        throw probe.mistake(
            key,
            kind.map(one -> key + " does not go with sensor = \"" + one + "\"; leave it out")
                .orElse(key + " is for a probe with a sensor; add sensor = \"...\""));
      }
    }
    if (kind.isEmpty()) {
      return Optional.empty();
    }
    SensorLoop loop = loop(probe, kind.get(), channel);
    if (loop.measured() != channel.quantity()) {
      throw probe.mistake(
          "sensor",
          "sensor = \""
              + kind.get()
              + "\" measures "
              + loop.measured().label()
              + ", but channel "
              + channel
              + " is "
              + channel.quantity().label());
    }
    return Optional.of(loop);
  }

  private static List<String> allowed(TomlTable probe, String kind) {
    List<String> keys = KEYS.get(kind);
    if (keys == null) {
      throw probe.mistake(
          "sensor",
          "sensor = \""
              + kind
              + "\" is not known; use one of "
              + String.join(", ", KEYS.keySet().stream().sorted().toList()));
    }
    return keys;
  }

  private static SensorLoop loop(TomlTable probe, String kind, Channel channel) {
    return switch (kind) {
      case "pt100" -> new Rtd(100, lead(probe));
      case "pt1000" -> new Rtd(1000, lead(probe));
      case "ntc" -> thermistor(probe);
      case "thermocouple-k" -> new Thermocouple(ThermocoupleType.K, coldJunctionK(probe));
      case "thermocouple-t" -> new Thermocouple(ThermocoupleType.T, coldJunctionK(probe));
      case "4-20ma" -> currentLoop(probe, channel.quantity());
      case "1-wire" -> new DigitalThermometer();
      default -> counter(probe, channel);
    };
  }

  private static double lead(TomlTable probe) {
    return probe.measure("lead", Quantity.RESISTANCE, 0, 20).orElse(0);
  }

  private static SensorLoop thermistor(TomlTable probe) {
    List<Double> steinhartHart = probe.numbers("steinhart-hart");
    if (steinhartHart.isEmpty()) {
      double r25Ohm = probe.needMeasure("r25", Quantity.RESISTANCE, 10, 10e6);
      double betaK =
          probe
              .number("beta")
              .orElseThrow(
                  () -> probe.mistake("no beta for the thermistor; add beta = 3435 (its B25/50)"));
      return built(probe, "beta", () -> new NtcBeta(r25Ohm, betaK));
    }
    if (steinhartHart.size() != 3 || probe.has("beta") || probe.has("r25")) {
      throw probe.mistake(
          "steinhart-hart", "steinhart-hart takes three numbers [a, b, c], and no r25 or beta");
    }
    return built(
        probe,
        "steinhart-hart",
        () ->
            new NtcSteinhartHart(steinhartHart.get(0), steinhartHart.get(1), steinhartHart.get(2)));
  }

  private static double coldJunctionK(TomlTable probe) {
    return probe.needMeasure(
        "cold-junction", Quantity.TEMPERATURE, ICE_POINT_K - 40, ICE_POINT_K + 85);
  }

  private static SensorLoop currentLoop(TomlTable probe, Quantity quantity) {
    double low = endOfRange(probe, "at-4ma", quantity);
    double high = endOfRange(probe, "at-20ma", quantity);
    return built(probe, "at-20ma", () -> new CurrentLoop(quantity, low, high));
  }

  private static double endOfRange(TomlTable probe, String key, Quantity quantity) {
    String example = "0 " + quantity.storedUnit().code();
    String text = probe.needText(key, example);
    try {
      return Measure.parse(quantity, text);
    } catch (IllegalArgumentException e) {
      throw probe.mistake(key, key + ": " + e.getMessage());
    }
  }

  /** A counter is a rate on a flow or power channel, a total on the energy channel. */
  private static SensorLoop counter(TomlTable probe, Channel channel) {
    Quantity counted = channel.quantity() == Quantity.FLOW ? Quantity.VOLUME : Quantity.ENERGY;
    double siPerCount = probe.needMeasure("per-count", counted, 1e-12, 1e12);
    CountRegister register =
        probe.number("roll-over").isPresent()
            ? built(
                probe,
                "roll-over",
                () ->
                    new CountRegister(
                        probe.number("roll-over").getAsDouble(), Double.POSITIVE_INFINITY))
            : CountRegister.ENDLESS;
    return channel.quantity() == Quantity.ENERGY
        ? new RegisterTotal(Quantity.ENERGY, siPerCount, register)
        : built(probe, "sensor", () -> new PulseRate(channel.quantity(), siPerCount, register));
  }

  private interface Building<T> {
    T build();
  }

  private static <T> T built(TomlTable probe, String key, Building<T> building) {
    try {
      return building.build();
    } catch (IllegalArgumentException e) {
      throw probe.mistake(key, e.getMessage());
    }
  }

  /** The unit of the raw value where the rig states none: ohm, millivolt, milliampere, count. */
  static Unit usualUnit(SensorLoop loop) {
    return switch (loop.raw()) {
      case VOLTAGE -> Unit.of(Quantity.VOLTAGE, "mV");
      case CURRENT -> Unit.of(Quantity.CURRENT, "mA");
      case RATIO -> Unit.of(Quantity.RATIO, "1");
      default -> loop.raw().storedUnit();
    };
  }
}
