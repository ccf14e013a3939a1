package heatwake.dashboard.text;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.node.ObjectNode;
import heatwake.analysis.compare.Comparison;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.dashboard.json.ComparisonJson;
import heatwake.dashboard.present.UnitChoice;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ComparisonTextTest {
  private static final String WHY = "run 2, not to be believed: heat and COP: no heater gives that";

  private static final Comparison DOUBTED =
      new Comparison(
          1,
          2,
          Optional.of(new Estimate(0.6, 0.02)),
          Optional.of(new Estimate(0.7, 0.03)),
          Optional.empty(),
          Optional.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          OptionalDouble.empty(),
          Comparison.Outcome.UNKNOWN,
          List.of(WHY),
          List.of(WHY),
          List.of());

  @Test
  void aDoubtStandsBesideTheFiguresAndItsReasonBelow() {
    StringWriter written = new StringWriter();
    new ComparisonText(DOUBTED, UnitChoice.METRIC).writeTo(new PrintWriter(written));
    assertThat(written.toString())
        .contains("on equal conditions: cannot be said")
        .containsPattern("Heat of the later run +60 ± 4 % +not to be believed")
        .containsPattern("COP of the later run +70 ± 6 % +not to be believed")
        .containsOnlyOnce("no heater gives that");
  }

  @Test
  void onlyOneEmptyLineStandsBeforeWhatIsMissing() {
    Comparison nothing =
        new Comparison(
            1,
            2,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            Comparison.Outcome.UNKNOWN,
            List.of(),
            List.of(),
            List.of("run 1: no steady running to compare"));
    StringWriter written = new StringWriter();
    new ComparisonText(nothing, UnitChoice.METRIC).writeTo(new PrintWriter(written));
    assertThat(written.toString().lines().filter(String::isEmpty)).hasSize(1);
  }

  @Test
  void jsonCarriesTheDoubts() {
    ObjectNode json = ComparisonJson.of(DOUBTED);
    assertThat(json.get("outcome").asText()).isEqualTo("unknown");
    assertThat(json.get("heat_doubts").get(0).asText()).isEqualTo(WHY);
    assertThat(json.get("cop_doubts")).hasSize(1);
  }
}
