package heatwake.analysis.rule.pool;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Pool;
import java.util.List;
import java.util.OptionalDouble;
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

  /** Between the nameplate's flows the heat may be any: a quotient of it accuses no pool. */
  @Test
  void anAssumedFlowNeedsARatingToBoundTheHeat() {
    assertThat(withoutFlow(Rigs.typicalHeater())).contains("heat-loss");
    Heater plate = Rigs.typicalHeater();
    Heater unrated =
        new Heater(
            plate.label(),
            plate.refrigerant(),
            plate.flowMinM3PerS(),
            plate.flowMaxM3PerS(),
            plate.voltageV(),
            plate.currentMaxA(),
            plate.breakerA(),
            plate.restartDelayS(),
            plate.pressureMaxPa(),
            plate.speed(),
            List.of());
    assertThat(withoutFlow(unrated)).doesNotContain("heat-loss");
  }

  private static List<String> withoutFlow(Heater heater) {
    return Analysis.of(
            RunBuilder.run()
                .rig(Rigs.withHeater(heater))
                .without(Channel.FLOW_HEATER, Channel.FLOW_TOTAL, Channel.WATER_RETURN)
                .every(5)
                .pool(25)
                .circulating(12)
                .heating(300)
                .recording())
        .flags()
        .stream()
        .map(Flag::rule)
        .toList();
  }

  /**
   * 16.7 kW from 6 m2 are 2800 W/m2. Strong wind in dry air of 24 Cel takes, by hand, 323.6 x
   * (3.169 - 0.2 x 2.985) = 832 W/m2 by evaporation from water of 25 Cel, 22 by convection and 108
   * by radiation: 5.8 kW.
   */
  @Test
  void moreThanAnyPoolCanLoseIsTheMeasurements() {
    Pool small =
        new Pool(
            OptionalDouble.of(8), OptionalDouble.of(6), false, 0, OptionalDouble.of(28 + 273.15));
    Flag flag =
        Analysis.of(
                RunBuilder.run()
                    .rig(Rigs.withPool(small))
                    .every(5)
                    .pool(25)
                    .circulating(12)
                    .heating(300)
                    .recording())
            .flags()
            .stream()
            .filter(one -> one.rule().equals("heat-loss"))
            .findFirst()
            .orElseThrow();
    assertThat(flag.side()).isEqualTo(Side.MEASUREMENT);
    assertThat(flag.evidence())
        .contains(
            "Air, wind and sky cannot take more than 5.8 kW from an open pool of 6 m2, so the"
                + " heat or the pool's volume is wrong");
  }
}
