package heatwake.dashboard.present;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.ChannelCoverage;
import heatwake.analysis.finding.CycleFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.dashboard.example.InventedNight;
import heatwake.dashboard.json.FindingsJson;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * The night's heater promises 15.9 kW and ran for 6 h, 95 kWh; a pool heater's COP is 3 to 7 in
 * mild air (common practice). No heater gives less than nothing, and no pool gains by losing.
 */
class TellingTest {
  private static final Moment UTC = new Moment(ZoneOffset.UTC);
  private static final double KWH = 3.6e6;

  @Test
  void whatMayBeAnythingIsNoFigure() {
    Findings vague =
        night(
            new Estimate(-66 * KWH, 39.5 * KWH), new Estimate(-3, 2), new Estimate(-294e3, 237e3));
    assertThat(value(vague, "Heat delivered")).isEqualTo("too uncertain to tell");
    assertThat(value(vague, "COP")).isEqualTo("too uncertain to tell");
    assertThat(value(vague, "Pool loss, heater off")).isEqualTo("too uncertain to tell");
    assertThat(EndedTiles.of(vague, UnitChoice.METRIC).figures())
        .filteredOn(tile -> tile.name().equals("Heat delivered") || tile.name().startsWith("COP"))
        .hasSize(2)
        .allMatch(tile -> tile.value().equals("–") && tile.foot().equals("too uncertain to tell"));
    assertThat(CycleRow.of(vague, UnitChoice.METRIC, UTC))
        .allMatch(row -> row.heat().equals("–") && row.cop().equals("–"));
    assertThat(FindingsJson.of(vague).get("heat").get("delivered_kWh").asDouble()).isEqualTo(-66);
  }

  @Test
  void whatIsKnownToBeNearNothingIsAFigure() {
    Findings none =
        night(
            new Estimate(-0.1 * KWH, 0.95 * KWH), new Estimate(0.2, 0.15), new Estimate(100, 150));
    assertThat(value(none, "Heat delivered")).isEqualTo("−0.1 ± 1.9 kWh");
    assertThat(value(none, "COP")).isEqualTo("0.2 ± 0.3");
    assertThat(value(none, "Pool loss, heater off")).isEqualTo("0.1 ± 0.3 kW");
  }

  /** The sun on a pool by day. */
  @Test
  void aLossBelowNothingIsAGain() {
    Findings sunny =
        night(new Estimate(60 * KWH, 2 * KWH), new Estimate(5, 0.2), new Estimate(-4700, 650));
    assertThat(value(sunny, "Pool gain, heater off")).isEqualTo("4.7 ± 1.3 kW");
  }

  @Test
  void aStateThatIsSentOnChangeHasNoInterval() {
    Map<Channel, ChannelCoverage> all =
        Map.of(
            Channel.WATER_IN, new ChannelCoverage(2880, 1, 10),
            Channel.PUMP_ON, new ChannelCoverage(8, 1, 3630),
            Channel.FLOW_SWITCH, new ChannelCoverage(2880, 1, 10));
    assertThat(ReadingPace.words(Channel.PUMP_ON, all)).isEqualTo("on change");
    assertThat(ReadingPace.words(Channel.FLOW_SWITCH, all)).isEqualTo("one every 10 s");
    assertThat(ReadingPace.words(Channel.WATER_IN, all)).isEqualTo("one every 10 s");
  }

  private static String value(Findings findings, String name) {
    return FigureRows.ofRun(findings, UnitChoice.METRIC, UTC).stream()
        .filter(row -> row.name().equals(name))
        .findFirst()
        .orElseThrow()
        .value();
  }

  private static Findings night(Estimate deliveredJ, Estimate cop, Estimate lossW) {
    Findings night = InventedNight.findings();
    HeatFigures heat = night.heat();
    List<CycleFigures> cycles =
        night.cycles().stream()
            .map(
                one ->
                    new CycleFigures(
                        one.cycle(), Optional.of(deliveredJ), 1, one.electricJ(), Optional.of(cop)))
            .toList();
    return new Findings(
        night.run(),
        night.startMs(),
        night.endMs(),
        night.channels(),
        new HeatFigures(
            Optional.of(deliveredJ),
            1,
            heat.electricJ(),
            heat.electricKnown(),
            heat.electricTotalJ(),
            Optional.of(cop),
            heat.zeroOffsetK(),
            heat.flowWay(),
            heat.flowKnowledge()),
        night.heatDoubt(),
        night.zero(),
        night.bypass(),
        new PoolFigures(
            Optional.empty(),
            Optional.of(lossW),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            PoolFigures.NONE.poolMs(),
            PoolFigures.NONE.setpointMs(),
            false),
        night.cost(),
        night.steady(),
        night.phases(),
        cycles,
        night.flags(),
        night.startup(),
        night.verdict(),
        night.missing(),
        night.traces());
  }
}
