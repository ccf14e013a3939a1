package heatwake.collector.frame;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SentValueTest {
  @ParameterizedTest
  @CsvSource({"23.4,23.4", "-0.5,-0.5", "+7,7", ".5,0.5", "5.,5", "1e3,1000", "2.5E-3,0.0025"})
  void numbersArePlainDecimals(String text, double value) {
    assertThat(SentNumber.number(" " + text + " ")).hasValue(value);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "23,4",
        "23.4C",
        "0x1A",
        "1d",
        "NaN",
        "Infinity",
        "1e999",
        "--1",
        "1 2",
        "2t1",
        "٣",
        "11111111111111111111111111111111111111111111"
      })
  void anythingElseIsNoNumber(String text) {
    assertThat(SentNumber.number(text)).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"ON,1", "off,0", "true,1", "False,0", "closed,1", "open,0", "1,1", "0,0", "2,2"})
  void statesAreWordsOrNumbers(String text, double value) {
    assertThat(SentNumber.state(text)).hasValue(value);
  }

  @ParameterizedTest
  @ValueSource(strings = {"nan", "NaN", "null", "inf", "err"})
  void faultsAreWhatFirmwarePrintsForThem(String text) {
    assertThat(SentNumber.isFault(text)).isTrue();
  }

  // 2031-05-04T18:00:00Z is 1935684000 s after 1970: GNU date -u -d 2031-05-04T18:00:00Z +%s.
  @ParameterizedTest
  @ValueSource(
      strings = {
        "2031-05-04T18:00:00Z",
        "2031-05-04T18:00:00.000Z",
        "2031-05-04T20:00:00+02:00",
        "2031-05-04 18:00:00Z",
        "2031-05-04T18:00Z",
        "1935684000000",
        "1935684000000.0"
      })
  void timesAreIsoOrMilliseconds(String text) {
    assertThat(SentTime.parse(text)).hasValue(1935684000000L);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "2031-05-04T18:00:00",
        "2031-05-04",
        "yesterday",
        "-5",
        "1.5e12",
        "2031-13-04T18:00:00Z"
      })
  void timesWithoutOffsetAreRefused(String text) {
    assertThat(SentTime.parse(text)).isEmpty();
  }

  @Test
  void excerptsAreShortAndInert() {
    assertThat(Excerpt.of("a\u001b[31m\u202eb\n\u0000")).isEqualTo("\"a·[31m·b··\"");
    assertThat(Excerpt.of("x".repeat(1_000_000))).isEqualTo("\"" + "x".repeat(60) + "…\"");
  }
}
