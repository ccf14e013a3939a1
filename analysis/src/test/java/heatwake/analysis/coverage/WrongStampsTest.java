package heatwake.analysis.coverage;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.StampsLeftOut;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class WrongStampsTest {
  private static final long START = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();
  private static final long YEARS_AGO = Instant.parse("2001-01-01T00:00:00Z").toEpochMilli();
  private static final long YEARS_AHEAD = Instant.parse("2044-02-29T12:30:59Z").toEpochMilli();

  private static Recording with(StampsLeftOut... leftOut) {
    return new Recording(
        1, Rigs.bare(), START, START + 60_000, Map.of(), List.of(), List.of(), List.of(leftOut));
  }

  @Test
  void nothingIsSaidWhereAllTakePart() {
    assertThat(WrongStamps.of(with())).isEmpty();
  }

  @Test
  void oneReadingIsToldWithItsStamp() {
    assertThat(WrongStamps.of(with(new StampsLeftOut(Channel.POWER, 1, YEARS_AHEAD))))
        .containsExactly(
            "power: 1 reading left out, stamped far outside the run (2044-02-29 12:30 UTC); set the"
                + " probe's clock");
  }

  @Test
  void thoseBeforeAndAfterTheRunAreOneSentenceForEachChannel() {
    assertThat(
            WrongStamps.of(
                with(
                    new StampsLeftOut(Channel.WATER_IN, 2, YEARS_AGO),
                    new StampsLeftOut(Channel.WATER_IN, 5, YEARS_AHEAD),
                    new StampsLeftOut(Channel.POWER, 1, YEARS_AHEAD))))
        .containsExactlyInAnyOrder(
            "water-in: 7 readings left out, stamped far outside the run (such as 2001-01-01 00:00"
                + " UTC); set the probe's clock",
            "power: 1 reading left out, stamped far outside the run (2044-02-29 12:30 UTC); set the"
                + " probe's clock");
  }

  @Test
  void standsUnderMissing() {
    Recording recording = with(new StampsLeftOut(Channel.WATER_IN, 3, YEARS_AGO));
    assertThat(Analysis.of(recording).missing()).containsAll(WrongStamps.of(recording));
  }
}
