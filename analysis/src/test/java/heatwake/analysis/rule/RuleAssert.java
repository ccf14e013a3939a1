package heatwake.analysis.rule;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.series.Recording;
import heatwake.analysis.timeline.Timeline;
import java.util.List;
import java.util.Optional;

/** What a rule answered, for tests. */
public final class RuleAssert {
  private RuleAssert() {}

  /** The one flag a rule raised. */
  public static Flag onlyFlag(Rule rule, Evidence evidence) {
    Outcome outcome = rule.evaluate(evidence);
    assertThat(outcome).isInstanceOf(Outcome.Flagged.class);
    List<Flag> flags = ((Outcome.Flagged) outcome).flags();
    assertThat(flags).hasSize(1);
    assertThat(flags.get(0).rule()).isEqualTo(rule.id());
    assertThat(flags.get(0).endMs()).isGreaterThanOrEqualTo(flags.get(0).startMs());
    return flags.get(0);
  }

  public static void assertClear(Rule rule, Evidence evidence) {
    assertThat(rule.evaluate(evidence)).isEqualTo(Outcome.clear());
  }

  /** The reason a rule gave for not looking. */
  public static String reason(Rule rule, Evidence evidence) {
    Outcome outcome = rule.evaluate(evidence);
    assertThat(outcome).isInstanceOf(Outcome.NotEnoughData.class);
    return ((Outcome.NotEnoughData) outcome).reason();
  }

  /** Readings and phases of a recording, without heat and steady figures. */
  public static Evidence readings(Recording recording) {
    Timeline timeline = Timeline.of(recording);
    Phases phases = Phases.of(timeline, recording);
    return Evidence.of(
        recording,
        timeline,
        phases.spans(),
        phases.cycles(),
        HeatFigures.NONE,
        Optional.empty(),
        PoolFigures.NONE,
        List.of(),
        List.of());
  }
}
