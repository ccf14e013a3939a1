package heatwake.analysis.rule.pool;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * A pool that stays at 25 Cel for five hours loses all it is given. The nameplate promises 16 kW at
 * these conditions; 150 L/min warmed by 1 K take 10.4 kW.
 */
class HeatLossTest {
  private static List<String> rules(double riseK) {
    return Analysis.of(
            RunBuilder.run()
                .every(5)
                .pool(25)
                .heatingAt(Channel.WATER_OUT, riseK)
                .circulating(12)
                .heating(300)
                .recording())
        .flags()
        .stream()
        .map(Flag::rule)
        .toList();
  }

  @Test
  void aPoolThatLosesWhatASoundHeaterGivesLosesTooMuch() {
    assertThat(rules(1.6)).contains("heat-loss");
  }

  @Test
  void aWeakHeaterDoesNotMakeTheLossOfThePoolTooMuch() {
    assertThat(rules(0.7)).doesNotContain("heat-loss");
  }

  @Test
  void thePoolStandsByItselfBesideAHeaterThatIsALittleWeak() {
    assertThat(rules(1.2)).contains("heat-loss");
  }
}
