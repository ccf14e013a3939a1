package heatwake.collector.csv;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import java.io.IOException;
import org.junit.jupiter.api.Test;

/** Clocks that were set between two rows, and what only looks like one. */
class CsvClockTest extends CsvInStore {
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
}
