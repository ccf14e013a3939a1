package heatwake.dashboard.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TimeTicksTest {
  private static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");

  @ParameterizedTest
  @CsvSource({
    "PT5M, 10, PT1M",
    "PT10M, 10, PT2M",
    "PT15M, 10, PT2M",
    "PT1H, 10, PT10M",
    "PT2H, 10, PT15M",
    "PT4H, 10, PT30M",
    "PT9H, 10, PT1H",
    "PT12H, 10, PT2H",
    "PT24H, 10, PT3H",
    "P2D, 10, PT6H",
    "P4D, 10, PT12H",
    "P9D, 10, P1D",
    "P30D, 5, P7D",
    "P400D, 3, P140D",
  })
  void stepIsTheShortestRoundOneThatFits(Duration length, int most, Duration step) {
    assertThat(Duration.ofMillis(TimeTicks.stepFor(length.toMillis(), most))).isEqualTo(step);
  }

  @Test
  void standAtRoundLocalTimesAndNameTheNewDay() {
    assertThat(labels("2031-05-04T18:07:13Z", "2031-05-05T06:00:00Z", 8))
        .containsExactly("22:00", "Mon 5 May", "02:00", "04:00", "06:00", "08:00");
  }

  @Test
  void countHalfHoursFromMidnightInAZoneThatIsNotOnTheHour() {
    TimeRange range = range("2031-05-04T00:00:00Z", "2031-05-04T03:00:00Z");
    assertThat(TimeTicks.round(range, 10, ZoneId.of("Asia/Kathmandu")))
        .extracting(TimeTick::label)
        .containsExactly("06:00", "06:30", "07:00", "07:30", "08:00", "08:30");
  }

  /** In central Europe the hour from 02:00 to 03:00 does not exist on 30 March 2031. */
  @Test
  void stayRoundOverTheNightTheClocksGoForward() {
    List<TimeTick> ticks =
        TimeTicks.round(range("2031-03-29T22:30:00Z", "2031-03-30T04:00:00Z"), 10, BERLIN);
    assertThat(ticks)
        .extracting(TimeTick::label)
        .containsExactly("Sun 30 Mar", "01:00", "03:00", "04:00", "05:00", "06:00");
    assertThat(ticks).extracting(TimeTick::ms).isSorted().doesNotHaveDuplicates();
  }

  /** On 26 October 2031 the hour from 02:00 to 03:00 comes twice. */
  @Test
  void areInOrderOverTheNightTheClocksGoBack() {
    List<TimeTick> ticks =
        TimeTicks.round(range("2031-10-25T21:00:00Z", "2031-10-26T04:00:00Z"), 10, BERLIN);
    assertThat(ticks).extracting(TimeTick::ms).isSorted().doesNotHaveDuplicates();
    assertThat(ticks).extracting(TimeTick::label).contains("02:00", "03:00", "05:00");
  }

  @Test
  void daysAreMarkedByNameOnLongRuns() {
    assertThat(labels("2031-05-04T18:00:00Z", "2031-05-09T06:00:00Z", 7))
        .containsExactly("Mon 5 May", "Tue 6 May", "Wed 7 May", "Thu 8 May", "Fri 9 May");
  }

  private static List<String> labels(String from, String to, int most) {
    return TimeTicks.round(range(from, to), most, BERLIN).stream().map(TimeTick::label).toList();
  }

  private static TimeRange range(String from, String to) {
    return new TimeRange(Instant.parse(from).toEpochMilli(), Instant.parse(to).toEpochMilli());
  }
}
