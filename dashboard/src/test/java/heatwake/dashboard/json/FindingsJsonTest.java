package heatwake.dashboard.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.series.Recording;
import heatwake.dashboard.example.InventedNight;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The keys are a contract with scripts: they may be added to, never renamed. */
class FindingsJsonTest {
  private static List<String> keys(JsonNode node) {
    List<String> names = new ArrayList<>();
    node.fieldNames().forEachRemaining(names::add);
    return names;
  }

  @Test
  void keysOfTheContractAreThere() {
    JsonNode json = FindingsJson.of(InventedNight.findings());

    assertThat(keys(json))
        .contains(
            "run",
            "start",
            "end",
            "channels",
            "heat",
            "steady",
            "phases",
            "flags",
            "startup",
            "verdict",
            "missing");
    assertThat(keys(json.get("heat")))
        .contains(
            "delivered_kWh",
            "delivered_u_kWh",
            "electric_kWh",
            "electric_u_kWh",
            "electric_total_kWh",
            "cop",
            "cop_u",
            "zero_offset_K",
            "zero_offset_u_K");
    assertThat(keys(json.get("steady").get(0)))
        .contains("start", "end", "heat_kW", "heat_u_kW", "power_kW", "cop", "cop_u");
    assertThat(keys(json.get("flags").get(0)))
        .contains("rule", "severity", "start", "end", "evidence", "causes", "next_check");
    assertThat(keys(json.get("startup").get(0))).contains("check", "result", "evidence");
    assertThat(keys(json.get("verdict"))).contains("side", "confidence", "because");
    assertThat(json.get("phases").get(0).get("start").asText()).isEqualTo("2031-05-04T18:00:00Z");
  }

  @Test
  void figuresAreInTheUnitOfTheirKeyAndUncertaintiesAreExpanded() {
    Findings findings = InventedNight.findings();
    JsonNode heat = FindingsJson.of(findings).get("heat");
    double deliveredJ = findings.heat().deliveredJ().orElseThrow().value();
    double standardJ = findings.heat().deliveredJ().orElseThrow().standard();

    // 1 kWh = 3.6 MJ exactly (SI Brochure, table 8); expanded with k = 2.
    assertThat(heat.get("delivered_kWh").asDouble())
        .isCloseTo(deliveredJ / 3.6e6, org.assertj.core.data.Percentage.withPercentage(0.001));
    assertThat(heat.get("delivered_u_kWh").asDouble())
        .isCloseTo(2 * standardJ / 3.6e6, org.assertj.core.data.Percentage.withPercentage(0.001));
  }

  @Test
  void whatCouldNotBeComputedIsAbsent() {
    Recording night = InventedNight.recording();
    Recording nothing =
        new Recording(
            1, night.rig(), night.startMs(), night.endMs(), Map.of(), List.of(), List.of());

    JsonNode json = FindingsJson.of(Analysis.of(nothing));

    assertThat(keys(json.get("heat"))).isEmpty();
    assertThat(json.get("missing")).isNotEmpty();
  }
}
