package heatwake.dashboard.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Consequence;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.dashboard.example.InventedNight;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
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
            "electric_known",
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

  @Test
  void consequencesStandByThemselves() {
    Flag alone = InventedNight.findings().flags().get(0);
    Flag flag =
        new Flag(
            alone.rule(),
            alone.side(),
            alone.severity(),
            alone.startMs(),
            alone.endMs(),
            "Flow 60 L/min. Follows from it: low-heat (Heat 9 kW)",
            alone.causes(),
            alone.nextCheck(),
            alone.channels(),
            List.of(new Consequence("low-heat", "Heat 9 kW")));

    assertThat(FindingsJson.flag(flag).get("consequences"))
        .hasToString("[{\"rule\":\"low-heat\",\"evidence\":\"Heat 9 kW\"}]");
    assertThat(FindingsJson.flag(alone).get("consequences")).isEmpty();
  }

  @Test
  void everyKeyIsOnThePage() throws IOException {
    String page = Files.readString(Path.of("../docs/json.md"));
    Set<String> known = new TreeSet<>();
    collect(FindingsJson.of(InventedNight.findings()), known);

    assertThat(known).hasSizeGreaterThan(50).allMatch(key -> page.contains("`" + key + "`"));
  }

  /** Keys of an object and all below it; uncertainties and names of channels aside. */
  private static void collect(JsonNode node, Set<String> into) {
    for (String key : keys(node)) {
      if (Channel.find(key).isEmpty() && !key.matches(".*_u(_.*)?")) {
        into.add(key);
      }
      collect(node.get(key), into);
    }
    if (node.isArray()) {
      node.forEach(one -> collect(one, into));
    }
  }
}
