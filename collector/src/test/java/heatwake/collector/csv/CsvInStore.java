package heatwake.collector.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import heatwake.collector.mistake.MistakeException;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import java.io.IOException;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Locale;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A real database that CSV files are imported into and exported from. */
abstract class CsvInStore {
  static final RigFile RIG = RigReader.parse("[site]\nname = \"Heron Lane\"\n", "rig.toml");

  @TempDir Path folder;
  Store store;

  @BeforeEach
  void open() {
    store = Store.open(folder.resolve("heatwake.db"));
  }

  @AfterEach
  void close() {
    store.close();
  }

  Path csv(String text) throws IOException {
    return Files.writeString(folder.resolve("data.csv"), text);
  }

  long imported(String text) throws IOException {
    return CsvImport.run(store, RIG, csv(text)).run();
  }

  void refused(String text, String message) throws IOException {
    Path file = csv(text);
    assertThatThrownBy(() -> CsvImport.run(store, RIG, file))
        .isInstanceOf(MistakeException.class)
        .hasMessage(file + message)
        .message()
        .doesNotContain("\n");
    assertThat(store.runs()).isEmpty();
  }

  String exported(long run) {
    StringWriter out = new StringWriter();
    CsvExport.write(store, run, out);
    return out.toString();
  }

  static String minutes(int... minutes) {
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
}
