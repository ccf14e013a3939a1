package heatwake.dashboard.score;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.StartupCheck;
import heatwake.dashboard.present.UnitChoice;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What the rules say of runs with many faults, for a person who reads US customary units. */
class UsWordsTest {
  private static final long SEED = 27_183;
  private static final int EVERY = 9;

  private static final Pattern METRIC = Pattern.compile("\\d (°C|K|L/min|MPa|kPa|bar)\\b");
  private static final Pattern NUMBER = Pattern.compile("\\d+(\\.\\d+)?");

  @Test
  void noFigureIsLeftInMetricUnitsAndNoneIsLost() {
    List<Case> all = FaultCases.of(Stock.seen(), SEED);
    Set<String> rules = new TreeSet<>();
    IntStream.range(0, all.size())
        .filter(i -> i % EVERY == 0)
        .mapToObj(i -> Result.of(all.get(i)).findings())
        .forEach(
            found -> {
              found.flags().forEach(flag -> rules.add(flag.rule()));
              List<String> metric = sentences(found).toList();
              List<String> us = sentences(UnitChoice.US.worded(found)).toList();
              assertThat(us).noneMatch(text -> METRIC.matcher(text).find());
              for (int k = 0; k < metric.size(); k++) {
                assertThat(numbers(us.get(k))).as(us.get(k)).isEqualTo(numbers(metric.get(k)));
              }
            });
    assertThat(rules).hasSizeGreaterThan(8);
  }

  private static long numbers(String text) {
    return NUMBER.matcher(text).results().map(MatchResult::group).count();
  }

  private static Stream<String> sentences(Findings found) {
    return Stream.of(
            found.flags().stream().map(Flag::evidence),
            found.flags().stream().map(Flag::nextCheck),
            found.flags().stream().flatMap(flag -> flag.causes().stream()),
            found.startup().stream().map(StartupCheck::evidence),
            found.verdict().because().stream(),
            found.verdict().wouldDecide().stream(),
            found.missing().stream())
        .flatMap(texts -> texts);
  }
}
