package heatwake.analysis.rule.airflow;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Heat and evaporating temperature of each stretch are given over its minutes. */
class FrostingTest {
  private final Frosting rule = new Frosting();

  /** Stretches of running with a five-minute pause in the given phase between them. */
  private static Evidence run(
      int stretches,
      double minutes,
      Phase pause,
      DoubleUnaryOperator heatByMinute,
      DoubleUnaryOperator coilCelByMinute) {
    return run(stretches, minutes, pause, 4, heatByMinute, coilCelByMinute);
  }

  private static Evidence run(
      int stretches,
      double minutes,
      Phase pause,
      double airCel,
      DoubleUnaryOperator heatByMinute,
      DoubleUnaryOperator coilCelByMinute) {
    RunBuilder story = RunBuilder.run().air(airCel).circulating(5);
    for (int i = 0; i < stretches; i++) {
      story.heating(minutes).circulating(5);
    }
    Recording recording = story.recording();
    Timeline timeline = Timeline.of(recording);
    double[] heat = new double[timeline.size()];
    double[] coil = new double[timeline.size()];
    List<PhaseSpan> phases = new ArrayList<>();
    long at = recording.startMs();
    phases.add(new PhaseSpan(Phase.CIRCULATING, at, at + 300_000));
    at += 300_000;
    for (int i = 0; i < stretches; i++) {
      long end = at + Math.round(minutes * 60_000);
      phases.add(new PhaseSpan(Phase.STEADY, at, end));
      phases.add(new PhaseSpan(pause, end, end + 300_000));
      for (int k = timeline.indexAt(at); k < timeline.indexAt(end); k++) {
        double minute = (timeline.timeMs(k) - at) / 60e3;
        heat[k] = heatByMinute.applyAsDouble(minute);
        coil[k] = 273.15 + coilCelByMinute.applyAsDouble(minute);
      }
      at = end + 300_000;
    }
    return Evidence.of(
        recording,
        timeline,
        phases,
        List.of(),
        HeatFigures.NONE,
        Optional.empty(),
        PoolFigures.NONE,
        List.of(),
        List.of(
            new Trace(Trace.Kind.HEAT, timeline.startMs(), timeline.stepMs(), heat),
            new Trace(Trace.Kind.EVAPORATING, timeline.startMs(), timeline.stepMs(), coil)));
  }

  /**
   * A defrost takes heat from the water for 1 to 12 min (common practice); this one is not over.
   */
  @Test
  void aDefrostThatTheRunsEndCutsOffIsNoIce() {
    for (double minutes : List.of(1.5, 3.0, 6.0)) {
      RunBuilder run =
          RunBuilder.run()
              .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER, Channel.POWER)
              .with(Channel.AIR_IN)
              .air(3)
              .every(30)
              .circulating(10);
      for (int k = 0; k < 4; k++) {
        run.heating(40).defrost(5);
      }
      assertThat(Analysis.of(run.heating(40).defrost(minutes).recording()).flags())
          .extracting(Flag::rule)
          .doesNotContain("frosting");
    }
  }

  /**
   * A rise of 1.4 K that falls to 0.7 K before each defrost: half of the heat, which fine digits
   * tell; digits of half a kelvin make as much of next to nothing.
   */
  @Test
  void aFallWithinTheDigitsIsNone() {
    assertThat(Analysis.of(falling(0.02)).flags()).extracting(Flag::rule).contains("frosting");
    assertThat(Analysis.of(falling(0.5)).flags()).extracting(Flag::rule).doesNotContain("frosting");
  }

  private static Recording falling(double digitsK) {
    RunBuilder run =
        RunBuilder.run()
            .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER, Channel.POWER)
            .with(Channel.AIR_IN)
            .air(3)
            .every(10)
            .resolution(Channel.WATER_IN, digitsK)
            .resolution(Channel.WATER_OUT, digitsK)
            .circulating(10);
    for (int k = 0; k < 4; k++) {
      for (double riseK = 1.4; riseK > 0.65; riseK -= 0.1) {
        run.heatingAt(Channel.WATER_OUT, riseK).heating(6);
      }
      run.defrost(5);
    }
    return run.heatingAt(Channel.WATER_OUT, 1.4).heating(40).recording();
  }

  /**
   * 0.4 of 1 K is 0.15 K over a quarter of it; k = 2 of digits, and of a quarter of what no rest
   * zeroed (by hand).
   */
  @Test
  void whatTheProbesLeaveOpenExcusesALoss() {
    assertThat(new RiseDoubt(0, 0).leaves(0.4, 1, 0.25)).isTrue();
    assertThat(new RiseDoubt(0.29, 0).leaves(0.4, 1, 0.25)).isTrue();
    assertThat(new RiseDoubt(0.31, 0).leaves(0.4, 1, 0.25)).isFalse();
    assertThat(new RiseDoubt(0, 0.07).leaves(0.4, 1, 0.25)).isTrue();
    assertThat(new RiseDoubt(0, 0.08).leaves(0.4, 1, 0.25)).isFalse();
    assertThat(new RiseDoubt(1, 1).leaves(0.4, Double.NaN, 0.25)).isTrue();
    assertThat(new RiseDoubt(0, 0).leaves(0.25, 1, 0.25)).isFalse();
  }

  @Test
  void saysHowMuchHeatWasLostBeforeADefrost() {
    var flag =
        onlyFlag(rule, run(3, 60, Phase.DEFROST, m -> 10_000 * (1 - 0.01 * m), m -> -4 - 0.1 * m));
    assertThat(flag.evidence())
        .matches(
            "Heat fell by 5\\d % in 5\\d min before a defrost, evaporating at −9\\.\\d °C; the same"
                + " 3 times");
    assertThat(flag.side()).isEqualTo(Side.AIRFLOW);
  }

  /** In air of 18 Cel it is the coil or its fan, not the defrost; in frost as above. */
  @Test
  void iceInWarmAirIsNoMatterOfTheDefrost() {
    var warm = onlyFlag(rule, iced(18));
    assertThat(warm.evidence()).contains("in air of 18.0 °C; a sound coil does not ice in such");
    assertThat(warm.nextCheck()).startsWith("Look through the coil against the light");
    var cold = onlyFlag(rule, iced(4));
    assertThat(cold.evidence()).doesNotContain("sound coil");
    assertThat(cold.nextCheck()).contains("defrost sensor");
  }

  private static Evidence iced(double airCel) {
    return run(1, 60, Phase.DEFROST, airCel, m -> 10_000 * (1 - 0.01 * m), m -> -4 - 0.1 * m);
  }

  @Test
  void ordinaryFrostBetweenDefrostsIsNoFault() {
    // Sound defrost controls let 10 to 25 % go; common practice.
    assertClear(rule, run(3, 50, Phase.DEFROST, m -> 10_000 * (1 - 0.005 * m), m -> -4 - 0.05 * m));
  }

  @Test
  void missesTheDefrostThatDoesNotCome() {
    assertThat(
            onlyFlag(
                    rule,
                    run(
                        1,
                        180,
                        Phase.CIRCULATING,
                        m -> 10_000 * (1 - 0.002 * m),
                        m -> -3 - 0.05 * m))
                .evidence())
        .contains("without a defrost");
  }

  /** A flow meter that says nothing more for the last minutes. */
  @Test
  void readingsThatEndBeforeTheRunHideNoIce() {
    onlyFlag(
        rule,
        run(
            1,
            300,
            Phase.CIRCULATING,
            m -> m > 290 ? Double.NaN : 10_000 * (1 - 0.001 * m),
            m -> -3 - 0.02 * m));
  }

  @Test
  void aCoilThatFallsFarAwayFromTheAirCarriesIceThoughTheHeatHoldsOut() {
    // Controls that watch the coil defrost when it has fallen by 3 to 6 K; common practice.
    onlyFlag(
        rule, run(1, 150, Phase.CIRCULATING, m -> 10_000 * (1 - 0.0013 * m), m -> -4 - 0.08 * m));
    assertClear(
        rule, run(1, 150, Phase.CIRCULATING, m -> 10_000 * (1 - 0.0013 * m), m -> -4 - 0.04 * m));
    assertClear(
        rule, run(1, 150, Phase.CIRCULATING, m -> 10_000 * (1 - 0.0003 * m), m -> -4 - 0.08 * m));
  }

  @Test
  void heatThatFallsAboveFreezingIsNotIce() {
    assertClear(rule, run(1, 180, Phase.CIRCULATING, m -> 10_000 * (1 - 0.003 * m), m -> 6));
  }

  @Test
  void heatThatFallsWhileTheCoilStaysIsNotIce() {
    assertClear(rule, run(1, 180, Phase.CIRCULATING, m -> 10_000 * (1 - 0.003 * m), m -> -3));
  }

  /** 350 kPa gauge is -17 Cel with R-410A (dew; property tables, from memory). */
  private static RunBuilder icedInWarmAir(double suctionCel) {
    RunBuilder story =
        RunBuilder.run()
            .air(20)
            .heatingAt(Channel.PRESSURE_SUCTION, 350)
            .heatingAt(Channel.TEMP_SUCTION, suctionCel)
            .circulating(10);
    for (int i = 0; i < 3; i++) {
      story.heating(25).defrost(4);
    }
    return story;
  }

  @Test
  void aCoilThatIcesInWarmAirIsShortOfAir() {
    var flags = Analysis.of(icedInWarmAir(-11).recording()).flags();
    assertThat(flags).extracting(Flag::side).containsOnly(Side.AIRFLOW);
    assertThat(flags.toString()).contains("at the end of 3 stretches of running");
  }

  /**
   * Ice takes air and heat alike (physics): a coil that hands over the nameplate's heat to the end
   * has none to speak of, though it was laid out to run cold. 600 kPa gauge is -3.7 Cel with R-410A
   * (dew; property tables, from memory).
   */
  @Test
  void unlessItGivesItsHeatToTheEnd() {
    RunBuilder sound = inAirOf13(1.06);
    RunBuilder weak = inAirOf13(0.85);
    assertThat(Analysis.of(sound.recording()).flags().toString()).doesNotContain("ice in such air");
    assertThat(Analysis.of(weak.recording()).flags().toString()).contains("ice in such air");
  }

  /** The plate promises some 11 kW there, a rise of 1.06 K at 150 L/min. */
  private static RunBuilder inAirOf13(double riseK) {
    RunBuilder story =
        RunBuilder.run()
            .air(13)
            .heatingAt(Channel.WATER_OUT, riseK)
            .heatingAt(Channel.PRESSURE_SUCTION, 600)
            .heatingAt(Channel.TEMP_SUCTION, 1)
            .circulating(10);
    for (int i = 0; i < 3; i++) {
      story.heating(40).defrost(4);
    }
    return story;
  }

  @Test
  void unlessItsSuperheatShowsItShortOfRefrigerant() {
    var flags = Analysis.of(icedInWarmAir(2).recording()).flags();
    assertThat(flags).extracting(Flag::rule).contains("low-charge").doesNotContain("frosting");
  }

  @Test
  void saysWhatIsMissing() {
    Recording recording =
        RunBuilder.run().only(Channel.PRESSURE_DISCHARGE).off(5).heating(20).recording();
    assertThat(reason(rule, readings(recording)))
        .isEqualTo("neither heat nor the water's rise known");
  }

  /** Heat that is gone within a minute is a defrost or a stop, however seldom it is told as one. */
  @Test
  void heatThatIsGoneAtOnceIsNoIce() {
    DoubleUnaryOperator thaw = minute -> minute % 45 > 40 ? 0 : 9000 - 30 * (minute % 45);
    assertClear(rule, run(1, 180, Phase.CIRCULATING, thaw, minute -> -4));
    DoubleUnaryOperator ices = minute -> Math.max(0, 9000 - 60 * minute);
    onlyFlag(rule, run(1, 150, Phase.CIRCULATING, ices, minute -> -4 - minute / 30));
  }

  /** Physics: ice takes the heat, and hardly any of the power; a slower motor takes both. */
  @Test
  void aCompressorThatSlowsDownIsNoIce() {
    assertThat(fallingTo(0.5, 0.5)).doesNotContain("frosting");
    assertThat(fallingTo(0.5, 0.9)).contains("frosting");
  }

  private static List<String> fallingTo(double heatShare, double powerShare) {
    RunBuilder run =
        RunBuilder.run()
            .air(4)
            .without(Channel.PRESSURE_SUCTION, Channel.PRESSURE_DISCHARGE)
            .circulating(10)
            .heating(30);
    for (int i = 1; i <= 15; i++) {
      run.heatingAt(Channel.WATER_OUT, 1.6 * (1 - (1 - heatShare) * i / 15))
          .heatingAt(Channel.POWER, 2700 * (1 - (1 - powerShare) * i / 15))
          .heating(6);
    }
    return Analysis.of(run.heating(30).circulating(5).recording()).flags().stream()
        .map(Flag::rule)
        .toList();
  }
}
