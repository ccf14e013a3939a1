package heatwake.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SilencingTest {
  private static Flag flag(String rule, Side side, Channel channel) {
    return new Flag(
        rule, side, Severity.WARNING, 0, 3_600_000, rule, List.of(), "look", Set.of(channel));
  }

  /** A pool that lost more than any pool can, by a probe that has come off: that is the probe. */
  @Test
  void aLossThatCannotBeIsAConsequenceOfTheProbeThatSlipped() {
    Flag slipped = flag("probe-slipped", Side.MEASUREMENT, Channel.WATER_IN);
    Flag loss = flag("heat-loss", Side.MEASUREMENT, Channel.WATER_IN);

    List<Flag> standing = Silencing.of(List.of(loss, slipped));

    assertThat(standing).extracting(Flag::rule).containsExactly("probe-slipped");
    assertThat(standing.get(0).evidence()).endsWith("Not held against the heater: heat-loss");
  }

  @Test
  void measurementFlagsDoNotSilenceEachOther() {
    Flag slipped = flag("probe-slipped", Side.MEASUREMENT, Channel.WATER_IN);
    Flag gap = flag("data-gap", Side.MEASUREMENT, Channel.WATER_IN);

    assertThat(Silencing.of(List.of(gap, slipped))).hasSize(2);
  }

  @Test
  void aProbeSilencesOnlyWhatRestsOnItsReadings() {
    Flag slipped = flag("probe-slipped", Side.MEASUREMENT, Channel.WATER_IN);
    Flag voltage = flag("voltage-range", Side.ELECTRICAL, Channel.VOLTAGE);
    Flag heat = flag("low-heat", Side.UNDECIDED, Channel.WATER_IN);

    assertThat(Silencing.of(List.of(voltage, heat, slipped)))
        .extracting(Flag::rule)
        .containsExactly("voltage-range", "probe-slipped");
  }
}
