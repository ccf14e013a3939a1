package heatwake.collector.store;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Names of sites in lists of runs. */
class SiteNamesTest {
  @TempDir private Path folder;

  private Path file() {
    return folder.resolve("h.db");
  }

  private RigFile rig(String path, String site) throws IOException {
    Path file = folder.resolve(path);
    Files.createDirectories(file.getParent());
    Files.writeString(file, site + "[[probe]]\nchannel = \"power\"\n");
    return RigReader.readForImport(file);
  }

  @Test
  void sitesWithoutANameAreToldApartByTheFoldersOfTheirRigs() throws IOException {
    try (Store store = Store.open(file())) {
      store.beginRun(rig("north/rig.toml", ""), 1000);
      assertThat(store.runHeadings()).extracting(RunHeading::shown).containsExactly("rig");
      store.beginRun(rig("south/rig.toml", ""), 1000);
      store.beginRun(rig("south/pool.toml", ""), 1000);
      store.beginRun(rig("east/rig.toml", "[site]\nname = \"Heron Lane\"\n"), 1000);
      assertThat(store.runHeadings())
          .extracting(RunHeading::shown)
          .containsExactly("rig (north)", "rig (south)", "pool", "Heron Lane");
      assertThat(store.runs())
          .extracting(RunSummary::shown)
          .containsExactly("rig (north)", "rig (south)", "pool", "Heron Lane");
      assertThat(store.runs())
          .extracting(RunSummary::site)
          .containsExactly("rig", "rig", "pool", "Heron Lane");
    }
  }

  /** By hand in the rig's folder, and as a service by the whole path. */
  @Test
  void oneRigHasOneNameHoweverItsPathWasWritten() throws IOException {
    RigFile rig = rig("north/rig.toml", "");
    RigFile bare =
        new RigFile("rig.toml", rig.folder(), rig.rig(), rig.sources(), rig.probes(), rig.text());
    RigFile old = RigReader.parseForImport(rig.text(), "rig.toml");
    try (Store store = Store.open(file())) {
      store.beginRun(old, 1000);
      store.beginRun(rig, 1000);
      store.beginRun(bare, 1000);
      assertThat(store.rigName(3)).isEqualTo("north/rig.toml");
      // Of a run from before folders were kept nothing more is known.
      assertThat(store.runHeadings())
          .extracting(RunHeading::shown)
          .containsExactly("rig", "rig (north)", "rig (north)");
    }
  }
}
