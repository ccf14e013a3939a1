package heatwake.dashboard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import heatwake.analysis.finding.BypassFigures;
import heatwake.analysis.finding.Consequence;
import heatwake.analysis.finding.CostFigures;
import heatwake.analysis.finding.CycleFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.finding.ProbeZero;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.finding.Verdict;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.uncertainty.Estimate;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Writes findings as JSON. Keys are fixed: a figure that could not be computed is absent,
 * uncertainties are expanded with k = 2, times are ISO-8601 UTC, and the unit is part of the key.
 */
public final class FindingsJson {
  private static final Unit KILOWATT_HOUR = Unit.of(Quantity.ENERGY, "kW.h");
  private static final Unit KILOWATT = Unit.of(Quantity.POWER, "kW");
  private static final Unit CELSIUS = Unit.of(Quantity.TEMPERATURE, "Cel");
  private static final Unit KELVIN = Unit.of(Quantity.TEMPERATURE_DIFFERENCE, "K");
  private static final Unit ONE = Unit.of(Quantity.RATIO, "1");
  private static final Unit LITRE_PER_MINUTE = Unit.of(Quantity.FLOW, "L/min");

  private static final double SECONDS_PER_HOUR = 3600;

  private FindingsJson() {}

  /** The findings of one run as a JSON object. */
  public static ObjectNode of(Findings findings) {
    ObjectNode root = JsonNodeFactory.instance.objectNode();
    root.put("run", findings.run());
    root.put("start", time(findings.startMs()));
    root.put("end", time(findings.endMs()));
    ObjectNode channels = root.putObject("channels");
    findings
        .channels()
        .forEach(
            (channel, coverage) -> {
              ObjectNode one = channels.putObject(channel.id());
              one.put("readings", coverage.readings());
              one.put("coverage", Figures.rounded(coverage.coverage()));
              one.put("interval_s", Figures.rounded(coverage.intervalS()));
            });
    root.set("heat", heat(findings.heat(), findings.heatDoubt()));
    findings.zero().ifPresent(zero -> root.set("zero", zero(zero)));
    findings.bypass().ifPresent(bypass -> root.set("bypass", bypass(bypass)));
    root.set("pool", pool(findings.pool()));
    findings.cost().ifPresent(cost -> root.set("cost", cost(cost)));
    ArrayNode steady = root.putArray("steady");
    findings.steady().forEach(span -> steady.add(doubted(steadySpan(span), findings)));
    ArrayNode phases = root.putArray("phases");
    findings.phases().forEach(span -> phases.add(phase(span)));
    ArrayNode cycles = root.putArray("cycles");
    findings.cycles().forEach(one -> cycles.add(doubted(cycle(one), findings)));
    ArrayNode flags = root.putArray("flags");
    findings.flags().forEach(flag -> flags.add(flag(flag)));
    ArrayNode startup = root.putArray("startup");
    findings.startup().forEach(check -> startup.add(startup(check)));
    root.set("verdict", verdict(findings.verdict()));
    root.set("missing", texts(findings.missing()));
    return root;
  }

  private static ObjectNode heat(HeatFigures heat, Optional<String> doubt) {
    Figures figures = new Figures();
    delivered(figures, heat.deliveredJ(), heat.deliveredKnown());
    figures.put("electric_kWh", "electric_u_kWh", KILOWATT_HOUR, heat.electricJ());
    heat.electricJ()
        .ifPresent(
            known -> figures.node().put("electric_known", Figures.rounded(heat.electricKnown())));
    figures.put("electric_total_kWh", "electric_total_u_kWh", KILOWATT_HOUR, heat.electricTotalJ());
    figures.put("cop", "cop_u", ONE, heat.cop());
    figures.put("zero_offset_K", "zero_offset_u_K", KELVIN, heat.zeroOffsetK());
    ObjectNode node = figures.node();
    heat.flowWay().ifPresent(way -> node.put("flow_way", way));
    doubt.ifPresent(why -> node.put("cop_doubt", why));
    return node;
  }

  /** A COP of a part of the run carries the doubt about the whole. */
  private static ObjectNode doubted(ObjectNode part, Findings findings) {
    if (part.has("cop")) {
      findings.heatDoubt().ifPresent(why -> part.put("cop_doubt", why));
    }
    return part;
  }

  private static void delivered(Figures figures, Optional<Estimate> heatJ, double known) {
    figures.put("delivered_kWh", "delivered_u_kWh", KILOWATT_HOUR, heatJ);
    heatJ.ifPresent(heat -> figures.node().put("delivered_known", Figures.rounded(known)));
  }

  private static ObjectNode zero(ProbeZero zero) {
    Figures figures = new Figures();
    figures.put("offset_K", "offset_u_K", KELVIN, Optional.of(zero.offsetK()));
    figures.put("drift_K", "drift_u_K", KELVIN, Optional.of(zero.driftK()));
    ArrayNode spans = figures.node().putArray("spans");
    for (ProbeZero.Span span : zero.spans()) {
      Figures one = new Figures();
      one.node().put("start", time(span.startMs())).put("end", time(span.endMs()));
      one.put("offset_K", "offset_u_K", KELVIN, Optional.of(span.offsetK()));
      spans.add(one.node());
    }
    return figures.node();
  }

  private static ObjectNode bypass(BypassFigures bypass) {
    Figures figures = new Figures();
    figures.node().put("at", time(bypass.atMs()));
    figures.put("heater_share", "heater_share_u", ONE, bypass.heaterShare());
    figures.put(
        "flow_heater_L_per_min", "flow_heater_u_L_per_min", LITRE_PER_MINUTE, bypass.flowM3PerS());
    figures.put("rise_K", "rise_u_K", KELVIN, bypass.riseK());
    figures.put("expected_heat_kW", "expected_heat_u_kW", KILOWATT, bypass.expectedHeatW());
    figures.put("rise_at_flow_max_K", "rise_at_flow_max_u_K", KELVIN, bypass.riseAtFlowMaxK());
    figures.put("rise_at_flow_min_K", "rise_at_flow_min_u_K", KELVIN, bypass.riseAtFlowMinK());
    figures.put("power_ratio", "power_ratio_u", ONE, bypass.powerRatio());
    return figures.node();
  }

  private static ObjectNode pool(PoolFigures pool) {
    Figures figures = new Figures();
    figures.put("stored_kWh", "stored_u_kWh", KILOWATT_HOUR, pool.storedJ());
    figures.put("loss_at_rest_kW", "loss_at_rest_u_kW", KILOWATT, pool.lossAtRestW());
    figures.put("loss_computed_kW", "loss_computed_u_kW", KILOWATT, pool.lossModelW());
    figures.put(
        "warming_K_per_h",
        "warming_u_K_per_h",
        KELVIN,
        pool.warmingKPerS().map(pace -> pace.times(SECONDS_PER_HOUR)));
    figures.put("pool_Cel", "pool_u_Cel", CELSIUS, pool.poolK());
    ObjectNode node = figures.node();
    pool.poolMs().ifPresent(at -> node.put("pool_seen", time(at)));
    pool.setpointMs().ifPresent(at -> node.put("setpoint_reached", time(at)));
    return node.put("setpoint_unreachable", pool.setpointUnreachable());
  }

  private static ObjectNode cost(CostFigures cost) {
    Figures figures = new Figures();
    figures.node().put("currency", cost.currency());
    figures.put("total", "total_u", ONE, cost.total());
    figures.put("per_kWh_heat", "per_kWh_heat_u", ONE, cost.perKWhHeat());
    return figures.node();
  }

  private static ObjectNode steadySpan(SteadySpan span) {
    Figures figures = new Figures();
    figures.node().put("start", time(span.startMs())).put("end", time(span.endMs()));
    figures.put("heat_kW", "heat_u_kW", KILOWATT, span.heatW());
    figures.put("power_kW", "power_u_kW", KILOWATT, span.powerW());
    figures.put("cop", "cop_u", ONE, span.cop());
    figures.put("rise_K", "rise_u_K", KELVIN, span.riseK());
    figures.put(
        "flow_heater_L_per_min", "flow_heater_u_L_per_min", LITRE_PER_MINUTE, span.flowM3PerS());
    figures.put("heater_share", "heater_share_u", ONE, span.heaterShare());
    figures.put("water_in_Cel", CELSIUS, span.waterInK());
    figures.put("air_Cel", CELSIUS, span.airK());
    figures.put("expected_heat_kW", "expected_heat_u_kW", KILOWATT, span.expectedHeatW());
    figures.put("expected_power_kW", "expected_power_u_kW", KILOWATT, span.expectedPowerW());
    figures.put("ratio", "ratio_u", ONE, span.ratio());
    figures.put("condensing_Cel", CELSIUS, span.condensingK());
    figures.put("evaporating_Cel", CELSIUS, span.evaporatingK());
    figures.put("superheat_K", KELVIN, span.superheatK());
    figures.put("subcooling_K", KELVIN, span.subcoolingK());
    figures.put("condenser_approach_K", KELVIN, span.condenserApproachK());
    figures.put("evaporator_approach_K", KELVIN, span.evaporatorApproachK());
    span.condensateKgPerS()
        .ifPresent(
            rate ->
                figures
                    .node()
                    .put("condensate_kg_per_h", Figures.rounded(rate * SECONDS_PER_HOUR)));
    return figures.node();
  }

  private static ObjectNode phase(PhaseSpan span) {
    return JsonNodeFactory.instance
        .objectNode()
        .put("phase", span.phase().id())
        .put("start", time(span.startMs()))
        .put("end", time(span.endMs()));
  }

  private static ObjectNode cycle(CycleFigures one) {
    Figures figures = new Figures();
    figures.node().put("start", time(one.cycle().startMs()));
    one.cycle().stopMs().ifPresent(stop -> figures.node().put("stop", time(stop)));
    figures.node().put("start_seen", one.cycle().startSeen());
    delivered(figures, one.deliveredJ(), one.deliveredKnown());
    figures.put("electric_kWh", "electric_u_kWh", KILOWATT_HOUR, one.electricJ());
    figures.put("cop", "cop_u", ONE, one.cop());
    return figures.node();
  }

  static ObjectNode flag(Flag flag) {
    ObjectNode node =
        JsonNodeFactory.instance
            .objectNode()
            .put("rule", flag.rule())
            .put("side", flag.side().id())
            .put("severity", flag.severity().id())
            .put("start", time(flag.startMs()))
            .put("end", time(flag.endMs()))
            .put("evidence", flag.evidence());
    node.set("causes", texts(flag.causes()));
    node.put("next_check", flag.nextCheck());
    ArrayNode consequences = node.putArray("consequences");
    for (Consequence one : flag.consequences()) {
      consequences.addObject().put("rule", one.rule()).put("evidence", one.evidence());
    }
    return node;
  }

  private static ObjectNode startup(StartupCheck check) {
    ObjectNode node =
        JsonNodeFactory.instance
            .objectNode()
            .put("check", check.check().id())
            .put("result", check.result().id())
            .put("evidence", check.evidence());
    check.atMs().ifPresent(at -> node.put("at", time(at)));
    return node;
  }

  private static ObjectNode verdict(Verdict verdict) {
    ObjectNode node =
        JsonNodeFactory.instance
            .objectNode()
            .put("side", verdict.side().id())
            .put("confidence", Figures.rounded(verdict.confidence()));
    node.set("because", texts(verdict.because()));
    node.set("would_decide", texts(verdict.wouldDecide()));
    return node;
  }

  private static ArrayNode texts(List<String> texts) {
    ArrayNode array = JsonNodeFactory.instance.arrayNode();
    texts.forEach(array::add);
    return array;
  }

  private static String time(long ms) {
    return Instant.ofEpochMilli(ms).toString();
  }
}
