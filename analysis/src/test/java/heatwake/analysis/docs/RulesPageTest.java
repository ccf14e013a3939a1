package heatwake.analysis.docs;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Rules;
import heatwake.analysis.verdict.ConsequenceTable;
import heatwake.analysis.verdict.FlagWeight;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The rules page is made from the rules; {@link Page} tells how to make it anew. */
class RulesPageTest {
  private static final Page PAGE = new Page("rules.md");

  @Test
  void isUpToDate() {
    PAGE.assertSame(text());
  }

  @Test
  void everyRuleSaysWhatItNeedsAndWhereItsLimitsComeFrom() {
    for (Rule rule : Rules.all()) {
      assertThat(rule.summary()).as(rule.id()).endsWith(".");
      assertThat(rule.needs()).as(rule.id()).isNotBlank();
      assertThat(rule.limits()).as(rule.id()).isNotBlank();
    }
    List<String> ids = Rules.all().stream().map(Rule::id).toList();
    assertThat(ids).doesNotHaveDuplicates();
  }

  private static String text() {
    StringBuilder text = new StringBuilder(20_000);
    text.append(
        """
        # Rules

        Made from the rules themselves; %s

        A rule looks for one trouble. It speaks only where a figure lies beyond its limit by more than three
        standard uncertainties (or as its limits say) and by an amount that matters, and it stays silent, with a
        line under `missing`, where a probe or a nameplate figure it needs is not there. "Common practice" and
        "ours" say where a limit comes from. How flags become a verdict is told on [verdict.md](verdict.md).

        | rule | raised when |
        |---|---|
        """
            .formatted(PAGE.command("RulesPageTest")));
    for (Rule rule : Rules.all()) {
      text.append("| [`%s`](#%s) | %s |%n".formatted(rule.id(), rule.id(), rule.summary()));
    }
    for (Rule rule : Rules.all()) {
      text.append("%n## %s%n%n%s%n%n".formatted(rule.id(), rule.summary()));
      text.append("**Needs** %s.%n%n".formatted(rule.needs()));
      text.append("**Limits**%s%n".formatted(LimitsList.of(rule.limits())));
      String causes = causesOf(rule.id());
      if (!causes.isEmpty()) {
        text.append(
            "%n**Named in the flag of** %s, where that explains it ([verdict.md](verdict.md)).%n"
                .formatted(causes));
      }
      text.append(
          "%n**Weight in the verdict** %.2f%n".formatted(FlagWeight.byRule().get(rule.id())));
    }
    return text.toString();
  }

  private static String causesOf(String id) {
    return ConsequenceTable.explained().entrySet().stream()
        .filter(row -> row.getValue().stream().anyMatch(entry -> entry.rule().equals(id)))
        .map(Map.Entry::getKey)
        .map("`%s`"::formatted)
        .collect(Collectors.joining(", "));
  }
}
