package heatwake.collector.csv;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Rows with a stamp far from those about them. */
class CsvStrayRowsTest extends CsvInStore {
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
}
