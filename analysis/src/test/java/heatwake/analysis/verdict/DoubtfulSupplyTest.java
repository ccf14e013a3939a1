package heatwake.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import org.junit.jupiter.api.Test;

/** A limit that is passed within the probe's error: no fault is named, and no health without it. */
class DoubtfulSupplyTest {
  private static Findings at(double volts, double amperes) {
    return Analysis.of(
        RunBuilder.run()
            .heatingAt(Channel.VOLTAGE, volts)
            .heatingAt(Channel.CURRENT, amperes)
            .circulating(12)
            .heating(90)
            .recording());
  }

  @Test
  void aSoundHeaterAtASoundSupplyIsToldAsSuch() {
    assertThat(at(230, 12.2).verdict().because().toString()).doesNotContain("supply", "current");
    assertThat(at(252, 16.5).verdict().because().toString()).doesNotContain("supply", "current");
  }

  /** 254.5 V are 10.7 % above 230 V. */
  @Test
  void voltageBeyondItsLimitIsSaidThoughNotForCertain() {
    Findings high = at(254.5, 12.2);
    assertThat(high.flags()).isEmpty();
    assertThat(high.verdict().side()).isEqualTo(Side.HEALTHY);
    assertThat(high.verdict().confidence()).isLessThanOrEqualTo(0.5);
    assertThat(high.verdict().because().toString())
        .contains("the supply stands 10.7 % above nominal 230 V");
    assertThat(high.verdict().wouldDecide().toString()).contains("licensed electrician");
  }

  /** The nameplate allows 16 A, and plates may be 5 % off: 16.8 A. */
  @Test
  void currentAboveThePlateIsNoPassedCheck() {
    Findings much = at(230, 17);
    assertThat(much.flags()).isEmpty();
    assertThat(much.verdict().because().toString())
        .contains("17.0 A where the nameplate allows 16.0 A");
    assertThat(much.startup())
        .filteredOn(check -> check.check() == StartupCheck.Item.CURRENT)
        .singleElement()
        .satisfies(
            check -> {
              assertThat(check.result()).isEqualTo(StartupCheck.Result.NOT_SEEN);
              assertThat(check.evidence()).contains("not for certain");
            });
  }
}
