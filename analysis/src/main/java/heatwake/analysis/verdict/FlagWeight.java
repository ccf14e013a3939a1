package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.quantity.Channel;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Set;

/**
 * How much a standing flag speaks for its side, 0 to 1: what share of call-outs with this flag an
 * experienced technician would expect to end on that side. Ours; the table is printed in the
 * documentation.
 */
public final class FlagWeight {
  private static final Map<String, Double> TABLE = table();

  /** What a heat that cannot be speaks for the measurement where no flag says so; ours. */
  static final double OF_IMPOSSIBLE_HEAT = 0.7;

  private static final double OF_OTHERS = 0.5;

  /** A flow told by the rise alone may be a loose clip's; ours. */
  public static final double OF_FLOW_BY_RISE = 0.65;

  private static final Set<Channel> RISE = Set.of(Channel.WATER_IN, Channel.WATER_OUT);

  /** What is only worth knowing weighs less. */
  private static final double OF_INFO = 0.4;

  private FlagWeight() {}

  private static Map<String, Double> table() {
    Map<String, Double> table = new LinkedHashMap<>();
    table.put("probes-swapped", 0.95);
    table.put("no-flow", 0.9);
    table.put("no-pressure-rise", 0.9);
    table.put("low-heater-flow", 0.85);
    table.put("low-charge", 0.85);
    table.put("air-recirculation", 0.85);
    table.put("no-compressor", 0.85);
    table.put("overcurrent", 0.85);
    table.put("probe-fault", 0.85);
    table.put("probe-stuck", 0.85);
    table.put("probe-slipped", 0.85);
    table.put("frosting", 0.8);
    table.put("pump-hours", 0.8);
    table.put("short-cycling", 0.8);
    table.put("runs-past-setpoint", 0.8);
    table.put("voltage-range", 0.8);
    table.put("restart-too-soon", 0.75);
    table.put("falling-flow", 0.75);
    table.put("condenser-approach", 0.75);
    table.put("evaporator-approach", 0.75);
    table.put("low-heat", 0.7);
    table.put("low-cop", 0.6);
    table.put("high-pressure", 0.6);
    table.put("heat-loss", 0.6);
    table.put("probe-offset", 0.6);
    table.put("high-heater-flow", 0.5);
    table.put("setpoint-unreachable", 0.5);
    table.put("clock-step", 0.5);
    table.put("data-gap", 0.4);
    return table;
  }

  /** Weights by rule, the heaviest first. */
  public static Map<String, Double> byRule() {
    return Collections.unmodifiableMap(TABLE);
  }

  static double of(Flag flag) {
    boolean byRise = flag.rule().equals("low-heater-flow") && flag.channels().equals(RISE);
    double weight = byRise ? OF_FLOW_BY_RISE : TABLE.getOrDefault(flag.rule(), OF_OTHERS);
    return flag.severity() == Severity.INFO ? OF_INFO * weight : weight;
  }
}
