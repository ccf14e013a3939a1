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
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.OptionalLong;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** CSV files in and out of a real database. */
class CsvTest {
  private static final RigFile RIG = RigReader.parse("[site]\nname = \"Heron Lane\"\n", "rig.toml");

  @TempDir private Path folder;
  private Store store;

  @BeforeEach
  void open() {
    store = Store.open(folder.resolve("heatwake.db"));
  }

  @AfterEach
  void close() {
    store.close();
  }

  private Path csv(String text) throws IOException {
    return Files.writeString(folder.resolve("data.csv"), text);
  }

  private long imported(String text) throws IOException {
    return CsvImport.run(store, RIG, csv(text)).run();
  }

  private void refused(String text, String message) throws IOException {
    Path file = csv(text);
    assertThatThrownBy(() -> CsvImport.run(store, RIG, file))
        .isInstanceOf(MistakeException.class)
        .hasMessage(file + message)
        .message()
        .doesNotContain("\n");
    assertThat(store.runs()).isEmpty();
  }

  private String exported(long run) {
    StringWriter out = new StringWriter();
    CsvExport.write(store, run, out);
    return out.toString();
  }

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

  private static String minutes(int... minutes) {
    StringBuilder text = new StringBuilder("time,water-in [Cel]\n");
    for (int k = 0; k < minutes.length; k++) {
      text.append(
          String.format(
              Locale.ROOT,
              "%s,%d\n",
              Instant.parse("2031-05-04T18:00:00Z").plusSeconds(60L * minutes[k]),
              k));
    }
    return text.toString();
  }

  @Test
  void aClockSetBackLosesNothingAndIsTold() throws IOException {
    CsvImport.Imported imported =
        CsvImport.run(store, RIG, csv(minutes(70, 71, 72, 13, 14, 15, 16)));
    assertThat(imported.remarks())
        .containsExactly(
            "at 2031-05-04T19:13:00Z the logger's clock was set back by 3600.0 s; so as not to"
                + " record one moment twice, the run's time is 3600.0 s ahead of it from here");
    String export = exported(imported.run());
    assertThat(export.lines()).hasSize(8).contains("2031-05-04T19:16:00Z,6.0");
    assertThat(exported(imported(export))).isEqualTo(export);
    assertThat(store.load(imported.run()).events())
        .singleElement()
        .satisfies(event -> assertThat(event.kind()).isEqualTo(EventKind.CLOCK_STEP));
  }

  @Test
  void aClockSetBackAndForwardAgainIsFollowed() throws IOException {
    CsvImport.Imported imported =
        CsvImport.run(store, RIG, csv(minutes(70, 71, 72, 13, 14, 15, 76, 77)));
    assertThat(imported.remarks())
        .hasSize(2)
        .last()
        .asString()
        .isEqualTo(
            "at 2031-05-04T19:16:00Z the logger's clock was set forward by 3600.0 s; the run"
                + " follows it");
    assertThat(exported(imported.run())).contains("2031-05-04T19:17:00Z,7.0");
  }

  /** Rows come unevenly where a logger writes on change: the clock is back before it was set. */
  @Test
  void aClockSetForwardAgainBehindTheRunsOwnTimeStillPartsItsRows() throws IOException {
    CsvImport.Imported imported =
        CsvImport.run(
            store,
            RIG,
            csv(
                """
                time,power [W]
                2031-05-04T18:00:00Z,1
                2031-05-04T18:05:00Z,2
                2031-05-04T18:10:00Z,3
                2031-05-04T18:07:40Z,4
                2031-05-04T18:11:00Z,5
                2031-05-04T18:11:10Z,6
                2031-05-04T18:16:00Z,7
                """));
    assertThat(store.readingCount(imported.run())).isEqualTo(7);
    assertThat(store.load(imported.run()).series().get(Channel.POWER).size()).isEqualTo(7);
  }

  private static final int DAY = 24 * 60;

  private static final String KEPT =
      "; kept at its own time and exported, but left out of the run's span and the analysis";

  /** Rows a minute apart, of which some are stamped otherwise. */
  private static String stamped(String... strays) {
    StringBuilder text = new StringBuilder("time,water-in [Cel]\n");
    for (int k = 0; k < 20; k++) {
      String own = String.format(Locale.ROOT, "2031-05-04T18:%02d:00Z", k);
      String stray = k >= 10 && k < 10 + strays.length ? strays[k - 10] : own;
      text.append(stray).append(',').append(k).append('\n');
    }
    return text.toString();
  }

  private void straysAreKeptAndLeftOut(String csv, int strays, String remark) throws IOException {
    CsvImport.Imported imported = CsvImport.run(store, RIG, csv(csv));
    assertThat(imported.remarks()).containsExactly(remark);
    Recording recording = store.load(imported.run());
    assertThat(recording.events())
        .singleElement()
        .matches(event -> event.kind() == EventKind.TIME_REFUSED && event.count() == strays)
        .matches(event -> event.text().equals(remark));
    Series water = recording.of(Channel.WATER_IN).orElseThrow();
    assertThat(water.size()).isEqualTo(20 - strays);
    for (int i = 0; i < water.size(); i++) {
      // Each value tells the minute of its row, from the 273.15 K of the Celsius scale's zero.
      long minute = Math.round(water.value(i) - 273.15);
      assertThat(Instant.ofEpochMilli(water.timeMs(i)))
          .isEqualTo(Instant.parse("2031-05-04T18:00:00Z").plusSeconds(60 * minute));
    }
    assertThat(recording.leftOut().stream().mapToLong(one -> one.readings()).sum())
        .isEqualTo(strays);
    assertThat(store.readingCount(imported.run())).isEqualTo(20);
  }

  @Test
  void aRowWithAStrayStampIsKeptAtItAndShiftsNothing() throws IOException {
    straysAreKeptAndLeftOut(
        stamped("2041-01-01T00:00:00Z"),
        1,
        "1 row stamped more than a day from those about it (line 12: 2041-01-01T00:00:00Z)" + KEPT);
    straysAreKeptAndLeftOut(
        stamped("2001-01-01T00:00:00Z"),
        1,
        "1 row stamped more than a day from those about it (line 12: 2001-01-01T00:00:00Z)" + KEPT);
    straysAreKeptAndLeftOut(
        stamped("2041-01-01T00:00:00Z", "2041-01-01T00:01:00Z", "1970-01-01T00:00:00Z"),
        3,
        "3 rows stamped more than a day from those about them (first line 12:"
            + " 2041-01-01T00:00:00Z); kept at their own times and exported, but left out of the run's"
            + " span and the analysis");
  }

  /** Within the week in which the bulk of the stamps would still take them in. */
  @Test
  void aStrayOfSomeDaysIsLeftOutToo() throws IOException {
    for (String day : List.of("2031-05-07", "2031-05-01", "2031-05-10", "2031-05-02")) {
      straysAreKeptAndLeftOut(
          stamped(day + "T18:10:00Z"),
          1,
          "1 row stamped more than a day from those about it (line 12: "
              + day
              + "T18:10:00Z)"
              + KEPT);
    }
  }

  @Test
  void aStrayStampInTheLastRowIsNoReasonToRefuseTheFile() throws IOException {
    straysAreKeptAndLeftOut(
        stamped().replace("2031-05-04T18:19:00Z", "2031-05-01T18:19:00Z"),
        1,
        "1 row stamped more than a day from those about it (line 21: 2031-05-01T18:19:00Z)" + KEPT);
    straysAreKeptAndLeftOut(
        stamped().replace("2031-05-04T18:19:00Z", "1970-01-01T00:00:00Z"),
        1,
        "1 row stamped more than a day from those about it (line 21: 1970-01-01T00:00:00Z)" + KEPT);
  }

  /** Within the week in which the bulk of the stamps would still take it in, and beyond. */
  @Test
  void aLastRowFarAheadOfAllThatCameBeforeIsAStray() throws IOException {
    for (String day : List.of("2031-05-06", "2031-05-10", "2041-01-01")) {
      straysAreKeptAndLeftOut(
          stamped().replace("2031-05-04T18:19:00Z", day + "T18:19:00Z"),
          1,
          "1 row stamped more than a day from those about it (line 21: "
              + day
              + "T18:19:00Z)"
              + KEPT);
    }
  }

  /** After a night, at a pace of days, after a gap like one before, with too few rows to tell. */
  @Test
  void aLastRowAfterAGapThatTheFileMayHaveCounts() throws IOException {
    for (String rows :
        List.of(
            minutes(0, 1, 2, 3, 4, 5, DAY),
            minutes(0, DAY, 2 * DAY, 4 * DAY, 5 * DAY, 6 * DAY, 9 * DAY),
            minutes(0, 1, 2, 2 * DAY, 2 * DAY + 1, 2 * DAY + 2, 5 * DAY),
            minutes(0, 1, 2, 3, 2 * DAY))) {
      CsvImport.Imported imported = CsvImport.run(store, RIG, csv(rows));
      assertThat(imported.remarks()).isEmpty();
      assertThat(store.load(imported.run()).of(Channel.WATER_IN).orElseThrow().size())
          .isEqualTo(rows.lines().count() - 1);
    }
  }

  @Test
  void aStrayStampInTheFirstRowShiftsNothing() throws IOException {
    straysAreKeptAndLeftOut(
        stamped().replace("2031-05-04T18:00:00Z", "2041-01-01T00:00:00Z"),
        1,
        "1 row stamped more than a day from those about it (line 2: 2041-01-01T00:00:00Z)" + KEPT);
  }

  @Test
  void aStrayThatCannotBeIsAnEventWhereItStands() throws IOException {
    long run =
        imported(
            stamped("2041-01-01T00:00:00Z")
                .replace("2041-01-01T00:00:00Z,10", "2041-01-01T00:00:00Z,850"));
    long placeMs = Instant.parse("2031-05-04T18:09:00Z").toEpochMilli();
    assertThat(store.load(run).events())
        .filteredOn(event -> event.kind() == EventKind.OUT_OF_RANGE)
        .singleElement()
        .satisfies(event -> assertThat(event.startMs()).isEqualTo(placeMs))
        .satisfies(event -> assertThat(event.endMs()).hasValue(placeMs));
  }

  @Test
  void aLeapThatDoesNotComeBackIsAGapOrAClockSetBack() throws IOException {
    assertThat(
            CsvImport.run(store, RIG, csv(minutes(1, 2, 3, 2 * DAY, 2 * DAY + 1, 5 * DAY)))
                .remarks())
        .isEmpty();
    CsvImport.Imported back =
        CsvImport.run(
            store, RIG, csv(minutes(2 * DAY, 2 * DAY + 1, 2 * DAY + 2, 3, 4, 5, 6, 7, 8, 9)));
    assertThat(back.remarks()).singleElement().asString().contains("set back by 172800.0 s");
    assertThat(store.load(back.run()).of(Channel.WATER_IN).orElseThrow().size()).isEqualTo(10);
  }

  @Test
  void twoStraysOfOneTimeThatDifferAreAMistake() throws IOException {
    refused(
        stamped("2041-01-01T00:00:00Z", "2041-01-01T00:00:00Z"),
        ":13: a second reading of water-in at 2041-01-01T00:00:00Z that differs (times count to"
            + " the millisecond); drop one");
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

  /** A logger that writes over its oldest rows hands out its newest block first. */
  @Test
  void blocksInTheWrongOrderAreAMistakeAndNotAClock() throws IOException {
    String end =
        ", and in order of time the blocks follow each other without a gap; sort the rows by time";
    refused(
        minutes(14, 15, 16, 17, 10, 11, 12, 13),
        ":6: the rows lie in blocks out of order: time goes back from 2031-05-04T18:17:00Z to"
            + " 2031-05-04T18:10:00Z"
            + end);
    refused(
        minutes(1, 2, 3, 7, 8, 9, 4, 5, 6, 10, 11, 12),
        ":8: the rows lie in blocks out of order: time goes back from 2031-05-04T18:09:00Z to"
            + " 2031-05-04T18:04:00Z"
            + end);
    // They overlap, or do not meet: the clock was set.
    assertThat(CsvImport.run(store, RIG, csv(minutes(14, 15, 16, 10, 11, 12, 13, 14))).remarks())
        .singleElement()
        .asString()
        .contains("set back");
    assertThat(CsvImport.run(store, RIG, csv(minutes(24, 25, 26, 10, 11, 12, 13))).remarks())
        .singleElement()
        .asString()
        .contains("set back");
  }

  @Test
  void rowsOutOfPlaceAreAMistakeAndNotAClock() throws IOException {
    String end = " as after a clock that was set back; sort the rows by time";
    refused(
        minutes(1, 2, 4, 3, 5),
        ":5: time runs backwards: 2031-05-04T18:03:00Z after 2031-05-04T18:04:00Z, and the rows do"
            + " not go on from there"
            + end);
    refused(
        minutes(9, 8, 7, 6),
        ":3: time runs backwards: 2031-05-04T18:08:00Z after 2031-05-04T18:09:00Z, and the rows do"
            + " not go on from there"
            + end);
  }

  @Test
  void aRowThatRepeatsOneIsPassedOverAndCounted() throws IOException {
    String row = "2031-05-04T18:00:00Z,26\n";
    CsvImport.Imported imported =
        CsvImport.run(store, RIG, csv("time,water-in [Cel]\n" + row + row + row));
    assertThat(imported.remarks()).containsExactly("2 rows passed over as repeated");
    assertThat(exported(imported.run()).lines()).hasSize(2);
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
