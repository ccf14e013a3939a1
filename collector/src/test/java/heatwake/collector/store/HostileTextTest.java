package heatwake.collector.store;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Note;
import heatwake.analysis.series.Recording;
import heatwake.collector.csv.CsvExport;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.io.StringWriter;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Text from people and wires is text, wherever it is kept. */
class HostileTextTest {
  private static final long START = 1_935_684_000_000L;

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(
      strings = {
        "'); DROP TABLE reading; --",
        "\"; DELETE FROM run; --",
        "=cmd|' /C calc'!A0",
        "+1+1,@SUM(A1)\r\n-2",
        "<script>alert(1)</script>",
        "?1 :a @b $c %s {} \\"
      })
  void isStoredAsItIsAndIsInNoExport(String text) {
    RigFile rig =
        RigReader.parse(
            "[site]\nname = "
                + "\""
                + text.replace("\\", "\\\\")
                    .replace("\"", "\\\"")
                    .replace("\r", "\\r")
                    .replace("\n", "\\n")
                + "\"\n",
            text);
    try (Store store = Store.open(folder.resolve("heatwake.db"))) {
      long run = store.beginRun(rig, START);
      store.append(run, List.of(new Reading(Channel.POWER, START, -2750, true)));
      store.addNote(run, START, text);
      store.addEvent(run, EventKind.UNREADABLE, text, START, OptionalLong.of(START), 1, text);
      store.updateEvent(1, OptionalLong.of(START + 1), 2, text);

      Recording recording = store.load(run);
      assertThat(recording.rig().site().name()).isEqualTo(text);
      assertThat(recording.notes()).containsExactly(new Note(START, text));
      assertThat(recording.events())
          .singleElement()
          .satisfies(
              event -> {
                assertThat(event.subject()).isEqualTo(text);
                assertThat(event.text()).isEqualTo(text);
              });
      assertThat(store.readingCount(run)).isEqualTo(1);
      StringWriter export = new StringWriter();
      CsvExport.write(store, run, export);
      // Nothing but channels, units, times and numbers: no cell can be a formula but a number.
      assertThat(export.toString()).isEqualTo("time,power [W]\r\n2031-05-04T18:00:00Z,-2750.0\r\n");
    }
  }
}
