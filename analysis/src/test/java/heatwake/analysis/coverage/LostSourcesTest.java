package heatwake.analysis.coverage;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.RunEvent;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;

class LostSourcesTest {
  private static final long START = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();
  private static final long MINUTE = 60_000;
  private static final long END = START + 120 * MINUTE;

  private static Recording with(RunEvent... events) {
    return new Recording(1, Rigs.bare(), START, END, Map.of(), List.of(events), List.of());
  }

  private static RunEvent lost(String source, long from, OptionalLong to) {
    return new RunEvent(EventKind.SOURCE_LOST, source, from, to, 3, "wrong user or password");
  }

  @Test
  void aLossThatLastsIsTold() {
    assertThat(LostSources.of(with(lost("wifi", START + 10 * MINUTE, OptionalLong.empty()))))
        .containsExactly(
            "source wifi: lost from 2031-05-04 18:10 UTC to the end of the run:"
                + " wrong user or password");
    // The recorder was stopped half a second after the last reading of another source.
    assertThat(LostSources.of(with(lost("wifi", END - MINUTE, OptionalLong.of(END + 500)))))
        .hasSize(1);
  }

  @Test
  void aLongLossIsToldWithItsLengthAndAShortOneIsNot() {
    assertThat(
            LostSources.of(
                with(
                    lost("clips", START, OptionalLong.of(START + 30_000)),
                    lost("wifi", START + MINUTE, OptionalLong.of(START + 11 * MINUTE)))))
        .containsExactly(
            "source wifi: lost for 10 min from 2031-05-04 18:01 UTC: wrong user or password");
  }

  @Test
  void manyShortLossesAreOneSentence() {
    assertThat(
            LostSources.of(
                with(
                    lost("clips", START, OptionalLong.of(START + 40_000)),
                    lost("clips", START + MINUTE, OptionalLong.of(START + 3 * MINUTE)))))
        .containsExactly(
            "source clips: lost 2 times, together 3 min, the longest from 2031-05-04 18:01 UTC:"
                + " wrong user or password");
  }

  @Test
  void standsUnderMissingAlsoWithoutAnyReading() {
    assertThat(Analysis.of(with(lost("wifi", START, OptionalLong.empty()))).missing())
        .anyMatch(text -> text.startsWith("source wifi: lost from"));
  }
}
