package heatwake.collector.csv;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_16;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.store.RunSummary;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** CSV files in and out of a real database. */
class CsvTest extends CsvInStore {
  @Test
  void readsWhatOtherLoggersWrite() throws IOException {
    long run =
        imported(
            String.join(
                "\r\n",
                "\uFEFFtime,water-in [Cel],\"power [kW]\",flow-heater [[gal_us]/min]",
                "2031-05-04T20:00:00.250+02:00,26.5,2.75,",
                "",
                "\"2031-05-04T18:00:01Z\",,,10",
                "2031-05-04T18:00:02.000123Z,-1e1,,\"12\"",
                ""));
    Recording recording = store.load(run);
    Series water = recording.of(Channel.WATER_IN).orElseThrow();
    assertThat(water.size()).isEqualTo(2);
    assertThat(Instant.ofEpochMilli(water.timeMs(0)))
        .isEqualTo(Instant.parse("2031-05-04T18:00:00.250Z"));
    assertThat(water.value(1)).isEqualTo(263.15);
    assertThat(recording.of(Channel.POWER).orElseThrow().value(0)).isEqualTo(2750);
    // 10 US gallons of 231 cubic inches a minute (NIST Handbook 44, appendix C).
    assertThat(recording.of(Channel.FLOW_HEATER).orElseThrow().value(0))
        .isCloseTo(10 * 231 * 0.0254 * 0.0254 * 0.0254 / 60, within(1e-18));
    assertThat(store.runs())
        .containsExactly(
            new RunSummary(
                run,
                "Heron Lane",
                Instant.parse("2031-05-04T18:00:00.250Z").toEpochMilli(),
                OptionalLong.of(Instant.parse("2031-05-04T18:00:02Z").toEpochMilli()),
                5));
  }

  @Test
  void writesWhatItReads() throws IOException {
    String csv =
        String.join(
            "\r\n",
            "time,water-in [Cel],power [W]",
            "2031-05-04T18:00:00.250Z,26.5,2750.0",
            "2031-05-04T18:00:01Z,,2751.125",
            "");
    assertThat(exported(imported(csv))).isEqualTo(csv);
  }

  @Test
  void aRunSurvivesExportAndImportBitForBit() throws IOException {
    Random random = new Random(4);
    Channel[] channels = Channel.values();
    StringBuilder text = new StringBuilder("time");
    for (Channel channel : channels) {
      text.append(',')
          .append(channel.id())
          .append(" [")
          .append(channel.storedUnit().code())
          .append(']');
    }
    long timeMs = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();
    for (int row = 0; row < 2000; row++) {
      timeMs += 1 + random.nextInt(2000);
      text.append("\r\n").append(Instant.ofEpochMilli(timeMs));
      for (int i = 0; i < channels.length; i++) {
        text.append(',');
        if (random.nextInt(4) > 0) {
          text.append(anyDouble(random));
        }
      }
    }
    long first = imported(text.append("\r\n").toString());
    String export = exported(first);
    long second = CsvImport.run(store, RIG, csv(export)).run();

    assertThat(exported(second)).isEqualTo(export);
    Recording one = store.load(first);
    Recording two = store.load(second);
    assertThat(two.startMs()).isEqualTo(one.startMs());
    assertThat(two.endMs()).isEqualTo(one.endMs());
    assertThat(two.events()).isEqualTo(one.events());
    for (Channel channel : channels) {
      Series a = one.of(channel).orElseThrow();
      Series b = two.of(channel).orElseThrow();
      assertThat(b.size()).isEqualTo(a.size());
      for (int i = 0; i < a.size(); i++) {
        assertThat(b.timeMs(i)).isEqualTo(a.timeMs(i));
        assertThat(Double.doubleToRawLongBits(b.value(i)))
            .isEqualTo(Double.doubleToRawLongBits(a.value(i)));
      }
    }
  }

  private static double anyDouble(Random random) {
    double value;
    do {
      value = Double.longBitsToDouble(random.nextLong());
    } while (!Double.isFinite(value));
    return switch (random.nextInt(3)) {
      case 0 -> value;
      case 1 -> random.nextInt(1000);
      default -> Double.parseDouble(String.format(Locale.ROOT, "%.2f", random.nextDouble() * 100));
    };
  }

  @Test
  void countsImpossibleValuesAndKeepsThem() throws IOException {
    long run =
        imported(
            """
            time,water-in [Cel]
            2031-05-04T18:00:00Z,850
            2031-05-04T18:00:01Z,26
            2031-05-04T18:00:02Z,-127
            """);
    Recording recording = store.load(run);
    assertThat(recording.of(Channel.WATER_IN).orElseThrow().size()).isEqualTo(3);
    assertThat(recording.events())
        .singleElement()
        .satisfies(
            event -> {
              assertThat(event.kind()).isEqualTo(EventKind.OUT_OF_RANGE);
              assertThat(event.count()).isEqualTo(2);
              assertThat(event.endMs().orElseThrow() - event.startMs()).isEqualTo(2000);
              assertThat(event.text())
                  .isEqualTo("water-in of 850.0 Cel cannot be; possible is -15 to 95 Cel");
            });
  }

  @Test
  void aYearThatIsNoClocksIsAMistake() throws IOException {
    String good = "time,water-in [Cel]\n2031-05-04T18:00:00Z,26\n";
    String mend = "; years from 1970 to 2099 are read; correct the row or drop it";
    refused(
        good + "1969-12-31T23:59:59Z,26\n",
        ":3: time \"1969-12-31T23:59:59Z\" is in the year 1969" + mend);
    refused(
        good + "2100-01-01T00:00:00Z,26\n",
        ":3: time \"2100-01-01T00:00:00Z\" is in the year 2100" + mend);
    refused(
        good + "0031-05-04T18:00:00Z,26\n",
        ":3: time \"0031-05-04T18:00:00Z\" is in the year 31" + mend);
    assertThat(imported("time,water-in [Cel]\n1970-01-01T00:00:00Z,26\n2099-12-31T23:59:59Z,26\n"))
        .isPositive();
  }

  @Test
  void saysWhatIsWrongWhereAndStoresNothing() throws IOException {
    String good = "time,water-in [Cel]\n2031-05-04T18:00:00Z,26\n";
    refused("", ":1: the file is empty; its first line is the header");
    refused("time,water-in [Cel]\n", ":1: no rows after the header; nothing to import");
    refused(
        "at,water-in [Cel]\n",
        ":1: the first column must be called time; the header reads like: time,water-in [Cel]");
    refused("time;water-in [Cel]\n", ":1: cells must be divided by commas; save it so");
    refused(
        new String("time,water-in [Cel]\n".getBytes(UTF_16), ISO_8859_1),
        ":1: not UTF-8 text but UTF-16; save it as CSV in UTF-8");
    refused(
        "time,watr-in [Cel]\n", ":1: no channel is called \"watr-in\"; did you mean \"water-in\"?");
    refused(
        "time,water-in\n",
        ":1: column \"water-in\" is not written <channel> [<unit>], like water-in [Cel]");
    refused(
        "time,power [Cel]\n",
        ":1: column \"power [Cel]\": unit \"Cel\" does not measure power; use one of W, kW,"
            + " [Btu_IT]/h, Btu/h");
    refused("time,power [W],power [kW]\n", ":1: a second column for channel power; keep one");
    refused(
        good + "2031-05-04T17:59:59.999Z,26\n",
        ":3: time runs backwards: 2031-05-04T17:59:59.999Z after 2031-05-04T18:00:00Z, and"
            + " the rows do not go on from there as after a clock that was set back; sort the rows"
            + " by time");
    refused(
        good + "2031-05-04T18:00:00Z,26.5\n",
        ":3: a second reading of water-in at 2031-05-04T18:00:00Z that differs: 26.5 after 26.0"
            + " (times count to the millisecond); drop one");
    refused(
        good + "\n2031-05-04T18:00:01,26\n",
        ":4: time \"2031-05-04T18:00:01\" is not ISO-8601 with offset or Z; write it like"
            + " 2031-05-04T18:00:00Z or 2031-05-04T20:00:00+02:00");
    refused(
        good + "2031-05-04T18:00:01Z\n",
        ":3: broken row: 1 cells where the header has 2; check commas and quotes");
    refused(
        good + "2031-05-04T18:00:01Z,26,4\n",
        ":3: broken row: 3 cells where the header has 2; check commas and quotes");
    refused(
        good + "2031-05-04T18:00:01Z,\"26\n2031-05-04T18:00:02Z,27\n",
        ":3: water-in [Cel]: \"26 2031-05-04T18:00:02Z,27 \" is not a number; write it like 27.35,"
            + " or leave the cell empty for no reading");
    for (String word : new String[] {"NaN", "Infinity", "1e999", "0x1p3", "26d", "26°", "err"}) {
      refused(
          good + "2031-05-04T18:00:01Z," + word + "\n",
          ":3: water-in [Cel]: \""
              + word
              + "\" is not a number; write it like 27.35, or leave the cell empty for no reading");
    }
  }

  @Test
  void namesAFileThatIsNotThere() {
    Path none = folder.resolve("none.csv");
    assertThatThrownBy(() -> CsvImport.run(store, RIG, none))
        .isInstanceOf(MistakeException.class)
        .hasMessage(none + ": no such file; check the path of the CSV");
  }
}
