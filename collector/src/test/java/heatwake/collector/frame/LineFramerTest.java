package heatwake.collector.frame;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.frame.LineFramer.Frame;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class LineFramerTest {
  private final LineFramer framer = new LineFramer();

  private List<Frame> feed(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.ISO_8859_1);
    return framer.feed(bytes, bytes.length, 0);
  }

  @Test
  void joinsPiecesAndKnowsAllLineEnds() {
    framer.quietAtFirst();
    List<Frame> got = new ArrayList<>(feed("t1=2"));
    got.addAll(feed("3.4\r"));
    got.addAll(feed("\nt1=23.5\n\n\rt1="));
    got.addAll(feed("23.6\r"));
    assertThat(got)
        .containsExactly(
            new Frame.Line("t1=23.4"), new Frame.Line("t1=23.5"), new Frame.Line("t1=23.6"));
  }

  @Test
  void firstLineOfAStreamAlreadyRunningIsARemainder() {
    assertThat(feed("3.4 t2=25.1\nt1=23.5\n"))
        .containsExactly(new Frame.Remainder("3.4 t2=25.1"), new Frame.Line("t1=23.5"));
  }

  @Test
  void overlongLineIsThrownAwayToItsEndAndNoFurther() {
    framer.quietAtFirst();
    List<Frame> got = new ArrayList<>(feed("x".repeat(3000)));
    got.addAll(feed("x".repeat(1_000_000)));
    got.addAll(feed("x\nt1=23.4\n"));
    assertThat(got).hasSize(2);
    assertThat(((Frame.Broken) got.get(0)).reason()).isEqualTo("a line of more than 4096 bytes");
    assertThat(got.get(1)).isEqualTo(new Frame.Line("t1=23.4"));
  }

  @Test
  void lineOfExactlyTheLongestLengthIsALine() {
    framer.quietAtFirst();
    assertThat(feed("y".repeat(4096) + "\n")).containsExactly(new Frame.Line("y".repeat(4096)));
  }

  @Test
  void lineThatStopsShortIsTornAndTheNextIsWhole() {
    framer.quietAtFirst();
    feed("t1=2");
    assertThat(framer.passed(4999)).isEmpty();
    assertThat(framer.passed(5000))
        .containsExactly(new Frame.Broken("t1=2", "a line without an end"));
    assertThat(feed("t1=23.4\n")).containsExactly(new Frame.Line("t1=23.4"));
  }
}
