package heatwake.collector.frame;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.rig.SourceSpec.LineFormat;
import java.util.List;
import org.junit.jupiter.api.Test;

class LineGuessTest {
  private static LineGuess guess(String... lines) {
    return LineGuess.of(List.of(lines)).orElseThrow();
  }

  @Test
  void tellsTheThreeFormatsApart() {
    assertThat(guess("t1=23.4 t2=25.1", "t1=23.5 t2=25.2").format())
        .isEqualTo(LineFormat.KEY_VALUE);
    assertThat(guess("t1=23.4,t2=25.1", "t1=23.5,t2=25.2").format())
        .isEqualTo(LineFormat.KEY_VALUE);
    assertThat(guess("23.4,25.1", "23.5,25.2").format()).isEqualTo(LineFormat.CSV);
    assertThat(guess("{\"t1\":23.4}", "{\"t1\":23.5}").format()).isEqualTo(LineFormat.JSON);
  }

  @Test
  void namesFieldsThatHoldNumbersAndTheTime() {
    LineGuess guess = guess("at=2031-05-04T18:00:00Z t1=23.4 id=box", "t1=nan id=box");
    assertThat(guess.fields()).containsOnlyKeys("t1").containsEntry("t1", "nan");
    assertThat(guess.time()).contains("at");
    assertThat(guess.isSure()).isTrue();
  }

  @Test
  void csvIsNamedByItsHeadingOrByNumber() {
    assertThat(guess("in;out", "23.4;25.1").fields()).containsOnlyKeys("in", "out");
    assertThat(guess("1935684000000;23.4;25.1").fields()).containsOnlyKeys("2", "3");
    assertThat(guess("1935684000000;23.4;25.1").time()).contains("1");
  }

  @Test
  void noiseIsNothing() {
    assertThat(LineGuess.of(List.of("\uFFFD\u0001x", "boot ok", "\uFFFD~"))).isEmpty();
    assertThat(guess("\uFFFD\u0001x", "boot ok", "t1=23.4").isSure()).isFalse();
  }
}
