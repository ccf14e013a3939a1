package heatwake.analysis.pool;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.water.PoolWater;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Reference: worked heat-up examples by IF97; the differential equation stepped numerically. */
class HeatUpTest {
  private static final double ICE_POINT_K = 273.15;
  private static final PoolWater FRESH = PoolWater.of(0, 101_325);

  private static double gainedJ(double volumeM3, double fromK, double toK) {
    return new PoolBody(Estimate.exact(volumeM3), FRESH)
        .gainedJ(Estimate.exact(fromK), Estimate.exact(toK))
        .value();
  }

  /** 50 m3 from 20 to 28 Cel: 463.89 kWh exact, 465.20 by the rule 1.163 kWh/(m3 K). */
  @Test
  void heatOfAMetricPool() {
    double kWh = gainedJ(50, ICE_POINT_K + 20, ICE_POINT_K + 28) / 3.6e6;
    assertThat(kWh).isCloseTo(463.89, within(0.0051));
  }

  /** 15 000 gal from 70 to 80 degF: 1 247 986 Btu exact, 1 251 000 by 8.34 lb/gal. */
  @Test
  void heatOfAnInchPoundPool() {
    double fromK = ICE_POINT_K + (70 - 32) / 1.8;
    double toK = ICE_POINT_K + (80 - 32) / 1.8;
    double btu = gainedJ(15_000 * 3.785411784e-3, fromK, toK) / 1055.05585262;
    assertThat(btu).isCloseTo(1_247_986, within(1.0));
  }

  /** 20 000 gal by 10 degF in 8 h: 208 500 Btu/h by 8.34 lb/gal (a gas heater's example). */
  @Test
  void timeOfAnInchPoundPool() {
    Estimate capacity = Estimate.exact(20_000 * 8.34 * 1055.05585262 * 1.8);
    HeatUp heatUp =
        new HeatUp(capacity, Estimate.exact(208_500 * 0.29307107017), Estimate.exact(0));
    HeatUp.Answer.Reached reached = (HeatUp.Answer.Reached) heatUp.to(10 / 1.8);
    assertThat(reached.seconds() / 3600).isCloseTo(8, within(1e-6));
    assertThat(reached.latestS().getAsDouble()).isCloseTo(reached.seconds(), within(1e-6));
  }

  @Property
  void followsTheEquationSteppedNumerically(
      @ForAll @DoubleRange(min = 1000, max = 20_000) double netW,
      @ForAll @DoubleRange(min = 0, max = 4000) double slopeWPerK,
      @ForAll @DoubleRange(min = 0.05, max = 0.95) double share) {
    double capacity = 2e8;
    double riseK = share * Math.min(10, netW / Math.max(1, slopeWPerK));
    HeatUp.Answer.Reached reached =
        (HeatUp.Answer.Reached)
            new HeatUp(Estimate.exact(capacity), Estimate.exact(netW), Estimate.exact(slopeWPerK))
                .to(riseK);
    int steps = 20_000;
    double stepS = reached.seconds() / steps;
    double t = 0;
    for (int i = 0; i < steps; i++) {
      double middle = t + (netW - slopeWPerK * t) / capacity * stepS / 2;
      t += (netW - slopeWPerK * middle) / capacity * stepS;
    }
    assertThat(t).isCloseTo(riseK, within(1e-4 * riseK));
  }

  @Test
  void saysWhenItNeverGetsThere() {
    HeatUp weak = new HeatUp(Estimate.exact(2e8), Estimate.exact(3000), Estimate.exact(2000));
    assertThat(weak.to(2)).isEqualTo(new HeatUp.Answer.Never(1.5));
    assertThat(weak.to(-1)).isEqualTo(new HeatUp.Answer.Already());
    HeatUp cooling = new HeatUp(Estimate.exact(2e8), Estimate.exact(-500), Estimate.exact(1000));
    assertThat(cooling.to(1)).isEqualTo(new HeatUp.Answer.Never(-0.5));
  }

  @Test
  void latestIsOpenWhenTheUncertaintyReachesNever() {
    HeatUp unsure = new HeatUp(Estimate.exact(2e8), new Estimate(3000, 800), Estimate.exact(1000));
    HeatUp.Answer.Reached reached = (HeatUp.Answer.Reached) unsure.to(2);
    assertThat(reached.earliestS()).isLessThan(reached.seconds());
    assertThat(reached.latestS()).isEmpty();
    assertThat(unsure.atBest().seconds(2)).isCloseTo(reached.earliestS(), within(1e-6));
    HeatUp surer = new HeatUp(Estimate.exact(2e8), new Estimate(3000, 100), Estimate.exact(1000));
    HeatUp.Answer.Reached sure = (HeatUp.Answer.Reached) surer.to(2);
    assertThat(sure.latestS().getAsDouble() - sure.seconds())
        .isGreaterThan(sure.seconds() - sure.earliestS());
  }

  @Test
  void volumeCarriesItsUncertainty() {
    PoolBody body = new PoolBody(new Estimate(50, 2.5), FRESH);
    Estimate gained =
        body.gainedJ(new Estimate(ICE_POINT_K + 26, 0.1), new Estimate(ICE_POINT_K + 28, 0.1));
    assertThat(gained.standard() / gained.value())
        .isCloseTo(Math.hypot(0.05, Math.sqrt(2) * 0.1 / 2), within(1e-4));
    double capacity = body.capacityJPerK(ICE_POINT_K + 27).value();
    assertThat(capacity * 2).isCloseTo(gained.value(), within(5e-4 * gained.value()));
    assertThatThrownBy(() -> new PoolBody(Estimate.exact(-1), FRESH))
        .hasMessage("pool volume -1 m3 is outside 0.1 to 100000 m3");
    assertThatThrownBy(() -> new HeatUp(Estimate.exact(0), Estimate.exact(1), Estimate.exact(1)))
        .hasMessageContaining("above zero");
  }
}
