package heatwake.analysis.phase;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.analysis.site.Rig;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * An inverter that is cut off every three minutes, before its soft start is over, between rests of
 * five; its pair of probes (0.3 K each) would be believed from 1.3 K on, and it warms the water by
 * 1 K. Stories by hand; a soft start takes one to three minutes (common practice).
 */
class AnsweringWaterTest {
  private static final double CYCLE_S = 480;
  private static final double DRAWS_S = 180;
  private static final double FAN_LEADS_S = 10;

  private static Rig doubtfulPair() {
    Rig rig = Rigs.typical();
    for (Channel channel : List.of(Channel.WATER_IN, Channel.WATER_OUT)) {
      rig = Rigs.withProbe(rig, channel, new ReadingUncertainty.Absolute(0.3));
    }
    return rig;
  }

  /** Fan at 150 W, then up to 1.5 kW; each time the fan first. */
  private static double softWatts(double atS) {
    double inS = atS % CYCLE_S;
    if (atS < CYCLE_S || inS >= DRAWS_S) {
      return 12;
    }
    return 150 + 8 * Math.max(0, inS - FAN_LEADS_S);
  }

  private static RunBuilder cutShort(double everyS, RunBuilder.Change waterOut) {
    return RunBuilder.run()
        .rig(doubtfulPair())
        .only(Channel.WATER_IN, Channel.WATER_OUT, Channel.POWER, Channel.AIR_IN)
        .every(everyS)
        .resolution(Channel.WATER_OUT, 0.0625)
        .noise(Channel.WATER_OUT, 0.03)
        .change(Channel.POWER, (atS, watt) -> softWatts(atS))
        .change(Channel.WATER_IN, (atS, cel) -> 26)
        .change(Channel.WATER_OUT, waterOut)
        .circulating(64);
  }

  /** Beside a zero of 0.2 K it climbs by 1 K to the end of the draw, and fades within minutes. */
  private static double warmed(double atS) {
    double inS = atS % CYCLE_S;
    double climbs = Math.min(inS, DRAWS_S) / DRAWS_S;
    double fades = Math.exp(-Math.max(0, inS - DRAWS_S) / 90);
    return 26.2 + (atS < CYCLE_S ? 0 : climbs * fades);
  }

  private static List<String> flagsOf(Findings findings) {
    return findings.flags().stream().map(Flag::rule).toList();
  }

  @ParameterizedTest(name = "every {0} s")
  @ValueSource(doubles = {1, 2, 5})
  void aCompressorThatIsCutShortIsNoFan(double everyS) {
    RunBuilder run = cutShort(everyS, (atS, cel) -> warmed(atS));
    Findings findings = Analysis.of(run.recording());
    assertThat(flagsOf(findings)).contains("short-cycling").doesNotContain("no-compressor");
    assertThat(findings.cycles()).hasSize(7);
    for (int k = 0; k < 7; k++) {
      double startS =
          (findings.cycles().get(k).cycle().startMs() - run.recording().startMs()) / 1e3;
      double trueS = (k + 1) * CYCLE_S + FAN_LEADS_S;
      assertThat(startS).isBetween(trueS - 10 - everyS, trueS + 10);
    }
  }

  /** The same draw, and the water stays as it was: whatever draws there is no compressor. */
  @Test
  void aDrawThatNothingAnswersIsNone() {
    Findings findings = Analysis.of(cutShort(1, (atS, cel) -> 26.2).recording());
    assertThat(findings.cycles()).isEmpty();
    assertThat(flagsOf(findings)).contains("no-compressor");
  }

  /**
   * A pump on the heater's meter, whose outlet pipe alone stands in air 15 K colder: in five
   * minutes it cools by 0.8 K, which the first of the pumped water takes away again.
   */
  @Test
  void waterThatIsBroughtByThePumpIsNoAnswer() {
    RunBuilder run =
        cutShort(
            1,
            (atS, cel) -> {
              double inS = atS % CYCLE_S;
              double cooled = 0.85 * Math.min(1, (inS - DRAWS_S) / (CYCLE_S - DRAWS_S));
              double flushed = 0.85 * Math.exp(-inS / 10);
              return 26.2 - (inS >= DRAWS_S ? cooled : flushed);
            });
    assertThat(Analysis.of(run.recording()).cycles()).isEmpty();
  }
}
