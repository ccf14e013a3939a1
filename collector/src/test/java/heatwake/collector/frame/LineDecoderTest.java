package heatwake.collector.frame;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.frame.LineDecoder.Line;
import heatwake.collector.rig.SourceSpec.LineFormat;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LineDecoderTest {
  private final LineDecoder pairs = LineDecoder.of(LineFormat.KEY_VALUE, Set.of("t1", "t2"));

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "t1=23.4 t2=25.1",
        "t1:23.4,t2:25.1",
        "t1 = 23.4 ; t2 = 25.1",
        "DATA t1=23.4\tt2=25.1 ok",
        "t1=23.4;;t2=25.1;",
        "t1: 23.4 °C, t2: 25.1 °C",
      })
  void keyValueIsReadInAllItsSpellings(String text) {
    Line.Fields line = (Line.Fields) pairs.decode(text);
    assertThat(line.message().field("t1")).contains("23.4");
    assertThat(line.message().field("t2")).contains("25.1");
    assertThat(line.complaint()).isEmpty();
  }

  @Test
  void valueMayBeATime() {
    Line.Fields line = (Line.Fields) pairs.decode("at=2031-05-04T18:00:00Z t1=23.4");
    assertThat(line.message().field("at")).contains("2031-05-04T18:00:00Z");
  }

  @Test
  void pairTouchedByNoiseIsNotTrustedAndItsNeighbourIs() {
    Line.Fields line = (Line.Fields) pairs.decode("\u0000\uFFFDt1=23.4 t2=25.1");
    assertThat(line.message().field("t1")).isEmpty();
    assertThat(line.message().field("t2")).contains("25.1");
    assertThat(line.complaint()).isPresent();
  }

  @Test
  void tornLineRunningIntoTheNextGivesNoWrongNumber() {
    Line line = pairs.decode("t1=23.4 t2=2t1=23.5 t2=25.2");
    assertThat(line).isInstanceOf(Line.Fields.class);
    // The torn "2" and the key that ran into it are gone; what stands apart is kept.
    Line.Fields fields = (Line.Fields) line;
    assertThat(fields.message().field("t1")).contains("23.4");
    assertThat(fields.message().field("t2")).contains("25.2");
    assertThat(fields.complaint()).isPresent();
  }

  @Test
  void oneKeyWithTwoValuesIsNotGuessedAt() {
    assertThat(pairs.decode("t1=23.4 t1=25.1"))
        .isEqualTo(new Line.Garbage("one key with two values"));
  }

  @Test
  void wordsAloneAreGarbage() {
    assertThat(pairs.decode("boot v1.2 ok")).isEqualTo(new Line.Garbage("no key and value"));
  }

  @Test
  void csvColumnsByHeadingWhichMayComeAgain() {
    LineDecoder csv = LineDecoder.of(LineFormat.CSV, Set.of("in", "out"));
    assertThat(csv.decode("27.1,29.9")).isInstanceOf(Line.Garbage.class);
    assertThat(csv.decode("in,out")).isInstanceOf(Line.Heading.class);
    Line.Fields line = (Line.Fields) csv.decode("27.1,29.9");
    assertThat(line.message().field("out")).contains("29.9");
    assertThat(csv.decode("out,in")).isInstanceOf(Line.Heading.class);
    line = (Line.Fields) csv.decode("29.9, 27.1");
    assertThat(line.message().field("in")).contains("27.1");
  }

  @Test
  void csvColumnsByNumberFromOneInAllSeparators() {
    LineDecoder csv = LineDecoder.of(LineFormat.CSV, Set.of("1", "3"));
    for (String row : new String[] {"27.1,,29.9", "27.1;;29.9", "27.1\t\t29.9", "\"27.1\",,29.9"}) {
      Line.Fields line = (Line.Fields) csv.decode(row);
      assertThat(line.message().field("1")).contains("27.1");
      assertThat(line.message().field("2")).isEmpty();
      assertThat(line.message().field("3")).contains("29.9");
      assertThat(line.message().field("4")).isEmpty();
    }
  }

  @Test
  void csvRowThatLostAColumnIsNotTrusted() {
    LineDecoder csv = LineDecoder.of(LineFormat.CSV, Set.of("1", "2"));
    csv.decode("27.1,29.9,55");
    assertThat(csv.decode("27.1,2.9")).isEqualTo(new Line.Garbage("a row of 2, not 3 columns"));
    assertThat(csv.decode("27.2,29.8,55")).isInstanceOf(Line.Fields.class);
  }

  @Test
  void csvDeviceThatChangedItsColumnsIsBelievedAtTheThirdRow() {
    LineDecoder csv = LineDecoder.of(LineFormat.CSV, Set.of("1", "2"));
    csv.decode("27.1,29.9,55");
    assertThat(csv.decode("27.1,29.9")).isInstanceOf(Line.Garbage.class);
    assertThat(csv.decode("27.1,29.9")).isInstanceOf(Line.Garbage.class);
    assertThat(csv.decode("27.1,29.9")).isInstanceOf(Line.Fields.class);
  }

  @Test
  void jsonByPointerOrKey() {
    LineDecoder json = LineDecoder.of(LineFormat.JSON, Set.of("/a/0"));
    Line.Fields line = (Line.Fields) json.decode("{\"a\":[23.4,null],\"on\":true,\"t~1\":1e3}");
    assertThat(line.message().field("/a/0")).contains("23.4");
    assertThat(line.message().field("/a/1")).contains("null");
    assertThat(line.message().field("/a")).isEmpty();
    assertThat(line.message().field("on")).contains("true");
    // RFC 6901: ~0 stands for ~, so /t~01 is the key t~1.
    assertThat(line.message().field("/t~01")).contains("1000.0");
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {"{\"t1\":23.4", "23.4}", "[23.4]", "23.4", "{\"t1\":23.4}{\"t1\":23.5}", "hello"})
  void cutOrStrangeJsonIsGarbage(String text) {
    LineDecoder json = LineDecoder.of(LineFormat.JSON, Set.of("t1"));
    assertThat(json.decode(text)).isInstanceOf(Line.Garbage.class);
  }
}
