package heatwake.collector.page;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalLong;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The examples of the docs are true: rigs are read, queries run by the sqlite3 shell. */
class PagesTest {
  private static final Path DOCS = Path.of("..", "docs");

  @TempDir private Path folder;

  private static List<String> blocks(String page, String language) throws IOException {
    return Pattern.compile("```" + language + "\\n(.*?)```", Pattern.DOTALL)
        .matcher(Files.readString(DOCS.resolve(page)))
        .results()
        .map((MatchResult block) -> block.group(1))
        .toList();
  }

  @Test
  void everyRigOnTheRigPageIsRead() throws IOException {
    List<String> rigs = blocks("rig.md", "toml");
    assertThat(rigs).hasSize(4);
    for (String rig : rigs) {
      RigFile file = RigReader.parse(rig, "rig.md");
      assertThat(file.probes()).isNotEmpty();
    }
  }

  @Test
  void everyKindOfEventIsOnTheDatabasePage() throws IOException {
    String page = Files.readString(DOCS.resolve("database.md"));
    for (EventKind kind : EventKind.values()) {
      assertThat(page).contains("| `" + kind.id() + "` | " + kind.meaning() + " |");
    }
  }

  @Test
  void theSqliteShellRunsEveryQueryOfTheDatabasePage() throws Exception {
    Path database = folder.resolve("heatwake.db");
    long startMs = 1_935_770_400_000L; // 2031-05-05T18:00:00Z by date(1)
    try (Store store = Store.open(database)) {
      long run =
          store.beginRun(RigReader.parse("[site]\nname = \"Heron Lane\"\n", "rig.toml"), startMs);
      store.append(
          run,
          List.of(
              new Reading(Channel.WATER_IN, startMs + 1, 26.5, true),
              new Reading(Channel.FLOW_HEATER, startMs + 2, 120, true)));
      store.addEvent(
          run, EventKind.SOURCE_LOST, "clips", startMs, OptionalLong.empty(), 1, "unplugged");
    }
    List<String> queries = blocks("database.md", "sql");
    assertThat(queries).hasSize(4);
    assertThat(shell(database, queries.get(0))).isEqualTo("2031-05-05T18:00:00.001Z|26.5|Cel\n");
    assertThat(shell(database, queries.get(1)))
        .isEqualTo("flow-heater|1|120.0|L/min\nwater-in|1|26.5|Cel\n");
    assertThat(shell(database, queries.get(2))).isEqualTo("2031-05-05T18:00|120.0\n");
    assertThat(shell(database, queries.get(3)))
        .isEqualTo("2031-05-05T18:00:00.000Z||source-lost|clips|1|unplugged\n");
    assertThat(shell(database, "SELECT id, site, readings FROM runs"))
        .isEqualTo("1|Heron Lane|2\n");
  }

  private static String shell(Path database, String sql) throws Exception {
    Process sqlite =
        new ProcessBuilder("sqlite3", "-readonly", database.toString(), sql)
            .redirectErrorStream(true)
            .start();
    String said = new String(sqlite.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(sqlite.waitFor()).as(said).isZero();
    return said;
  }
}
