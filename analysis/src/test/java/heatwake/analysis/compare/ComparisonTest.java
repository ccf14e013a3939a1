package heatwake.analysis.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.finding.ChannelCoverage;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.finding.Verdict;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Pool;
import heatwake.analysis.site.Rig;
import heatwake.analysis.site.Site;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** The figures are worked by hand from GUM (JCGM 100:2008) equation 12. */
class ComparisonTest {
  private static final Rig RIG =
      new Rig(
          new Site("test", 0), Pool.UNKNOWN, Optional.empty(), List.of(), Heater.UNKNOWN, Map.of());
  private static final Optional<Estimate> NAMEPLATE = Optional.of(new Estimate(15_000, 500));

  private static Findings run(long run, List<SteadySpan> steady) {
    return run(run, steady, Optional.empty(), List.of());
  }

  private static Findings run(
      long run, List<SteadySpan> steady, Optional<String> heatDoubt, List<Flag> flags) {
    ChannelCoverage read = new ChannelCoverage(3600, 1, 1);
    return new Findings(
        run,
        0,
        3_600_000,
        Map.of(Channel.FLOW_HEATER, read, Channel.AIR_IN, read, Channel.POWER, read),
        HeatFigures.NONE,
        heatDoubt,
        Optional.empty(),
        Optional.empty(),
        PoolFigures.NONE,
        Optional.empty(),
        steady,
        List.of(),
        List.of(),
        flags,
        List.of(),
        new Verdict(Side.UNDECIDED, 0, List.of(), List.of()),
        List.of(),
        List.of());
  }

  private static SteadySpan span(double heatW, double airK, Optional<Estimate> expected) {
    return span(heatW, airK, expected, Optional.empty());
  }

  private static SteadySpan span(
      double heatW, double airK, Optional<Estimate> expected, Optional<Estimate> cop) {
    Estimate heat = new Estimate(heatW, 300);
    OptionalDouble none = OptionalDouble.empty();
    return new SteadySpan(
        0,
        3_600_000,
        Optional.of(heat),
        Optional.empty(),
        cop,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.of(300),
        OptionalDouble.of(airK),
        expected,
        Optional.empty(),
        expected.map(heat::dividedBy),
        none,
        none,
        none,
        none,
        none,
        none,
        none);
  }

  private static Comparison compare(
      double heatA, double airA, double heatB, double airB, Optional<Estimate> expected) {
    return Comparison.of(
        RIG,
        run(1, List.of(span(heatA, airA, expected))),
        RIG,
        run(2, List.of(span(heatB, airB, expected))));
  }

  @Test
  void onEqualConditionsTheNameplatesUncertaintyDropsOut() {
    Comparison comparison = compare(15_000, 295, 13_500, 295, NAMEPLATE);

    // 0.9 * sqrt((300/15000)^2 + (300/13500)^2) = 0.02691
    assertThat(comparison.heatChange().orElseThrow().value()).isCloseTo(0.9, within(1e-12));
    assertThat(comparison.heatChange().orElseThrow().standard()).isCloseTo(0.02691, within(1e-5));
    assertThat(comparison.outcome()).isEqualTo(Comparison.Outcome.WORSE);
  }

  @Test
  void farApartTheNameplatesUncertaintyCountsInFull() {
    Comparison comparison = compare(15_000, 280, 13_500, 295, NAMEPLATE);

    // 0.9 * sqrt(0.02^2 + 0.02222^2 + (500/15000)^2) = 0.04030
    assertThat(comparison.heatChange().orElseThrow().standard()).isCloseTo(0.04030, within(1e-5));
  }

  @Test
  void changeWithinItsUncertaintyIsNone() {
    assertThat(compare(15_000, 295, 14_200, 295, NAMEPLATE).outcome())
        .isEqualTo(Comparison.Outcome.SAME);
    assertThat(compare(13_500, 295, 15_000, 295, NAMEPLATE).outcome())
        .isEqualTo(Comparison.Outcome.BETTER);
  }

  @Test
  void withoutNameplateOnlyAlikeConditionsCompare() {
    assertThat(compare(15_000, 295, 13_500, 296, Optional.empty()).outcome())
        .isEqualTo(Comparison.Outcome.WORSE);
    Comparison apart = compare(15_000, 280, 13_500, 295, Optional.empty());
    assertThat(apart.heatChange()).isEmpty();
    assertThat(apart.outcome()).isEqualTo(Comparison.Outcome.UNKNOWN);
    assertThat(apart.missing())
        .contains(
            "run 1: no expected heat at its conditions; state [[heater.rating]] and clip air-in");
  }

  @Test
  void runThatNeverRanSteadilySaysSo() {
    Comparison comparison =
        Comparison.of(RIG, run(1, List.of()), RIG, run(2, List.of(span(1e4, 295, NAMEPLATE))));

    assertThat(comparison.outcome()).isEqualTo(Comparison.Outcome.UNKNOWN);
    assertThat(comparison.missing()).containsExactly("run 1: no steady running to compare");
  }

  private static Flag flag(String rule, Side side, Channel channel, long startMs) {
    return new Flag(
        rule,
        side,
        Severity.WARNING,
        startMs,
        startMs + 1_000_000,
        "seen",
        List.of(),
        "look",
        Set.of(channel));
  }

  private static Comparison against(Optional<String> heatDoubt, List<Flag> flags) {
    Optional<Estimate> cop = Optional.of(new Estimate(5, 0.1));
    return Comparison.of(
        RIG,
        run(1, List.of(span(15_000, 295, Optional.empty(), cop))),
        RIG,
        run(2, List.of(span(8_000, 295, Optional.empty(), cop)), heatDoubt, flags));
  }

  @Test
  void nothingIsConcludedFromAHeatThatCannotBe() {
    Comparison comparison = against(Optional.of("no heater gives that"), List.of());

    assertThat(comparison.outcome()).isEqualTo(Comparison.Outcome.UNKNOWN);
    assertThat(comparison.heatChange()).isPresent();
    assertThat(comparison.heatDoubts())
        .containsExactly("run 2, not to be believed: heat and COP: no heater gives that");
    assertThat(comparison.copDoubts()).isEqualTo(comparison.heatDoubts());
  }

  @Test
  void nothingIsConcludedFromAProbeAccusedWhileTheHeaterRanSteadily() {
    Flag stuck = flag("probe-stuck", Side.MEASUREMENT, Channel.FLOW_HEATER, 0);
    assertThat(against(Optional.empty(), List.of(stuck)).outcome())
        .isEqualTo(Comparison.Outcome.UNKNOWN);

    Flag otherProbe = flag("probe-stuck", Side.MEASUREMENT, Channel.WATER_POOL, 0);
    Flag otherTime = flag("probe-fault", Side.MEASUREMENT, Channel.WATER_OUT, 3_600_000);
    Flag subtracted = flag("probe-offset", Side.MEASUREMENT, Channel.WATER_OUT, 0);
    Flag ofMachine = flag("low-heat", Side.REFRIGERANT, Channel.WATER_OUT, 0);
    Comparison sound =
        against(Optional.empty(), List.of(otherProbe, otherTime, subtracted, ofMachine));
    assertThat(sound.outcome()).isEqualTo(Comparison.Outcome.WORSE);
    assertThat(sound.copDoubts()).isEmpty();
  }

  @Test
  void nothingIsConcludedFromAHeatGivenToTheMeasurement() {
    Flag handed = flag("heat-loss", Side.MEASUREMENT, Channel.WATER_OUT, 0);
    assertThat(against(Optional.empty(), List.of(handed)).outcome())
        .isEqualTo(Comparison.Outcome.UNKNOWN);
  }

  @Test
  void accusedPowerMeterTakesTheCopAndLeavesTheHeat() {
    Flag power = flag("probe-stuck", Side.MEASUREMENT, Channel.POWER, 0);
    Comparison comparison = against(Optional.empty(), List.of(power));

    assertThat(comparison.outcome()).isEqualTo(Comparison.Outcome.WORSE);
    assertThat(comparison.heatDoubts()).isEmpty();
    assertThat(comparison.copDoubts()).containsExactly("run 2, not to be believed: COP: seen");
  }
}
