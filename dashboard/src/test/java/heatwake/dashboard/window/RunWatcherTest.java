package heatwake.dashboard.window;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.series.Note;
import heatwake.collector.store.Store;
import heatwake.dashboard.example.InventedNight;
import heatwake.dashboard.example.InventedStore;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.UnitChoice;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the watcher tells while other programs write, replace and remove the database. */
class RunWatcherTest {
  private static final long PATIENCE_S = 60;

  private record Told(Optional<Snapshot> snapshot, String trouble) {}

  @TempDir Path folder;
  private final BlockingQueue<Told> told = new LinkedBlockingQueue<>();
  private Path file;
  private RunWatcher watcher;

  @BeforeEach
  void watch() {
    file = folder.resolve("watch.db");
    watcher =
        new RunWatcher(
            file,
            UnitChoice.METRIC,
            new Moment(ZoneOffset.UTC),
            new RunWatcher.Listener() {
              @Override
              public void saw(Snapshot snapshot) {
                told.add(new Told(Optional.of(snapshot), ""));
              }

              @Override
              public void failed(String why) {
                told.add(new Told(Optional.empty(), why));
              }
            });
  }

  @AfterEach
  void close() {
    watcher.close();
  }

  @Test
  void nothingIsReadWhileNothingChanges() throws InterruptedException {
    try (Store store = Store.open(file)) {
      long run = InventedStore.begin(store, 20);
      watcher.start();
      Snapshot.Shown first = shownWhen(one -> true);
      Snapshot.Shown second = shownWhen(one -> true);
      assertThat(second.recording()).isSameAs(first.recording());
      assertThat(second.charts()).isSameAs(first.charts());
      InventedStore.append(store, run, 20, 25);
      long before = first.recording().endMs();
      assertThat(shownWhen(one -> one.recording().endMs() > before).recording().endMs())
          .isGreaterThan(InventedNight.minute(24.9));
    }
  }

  @Test
  void aNoteOfOnesOwnIsSeen() throws InterruptedException {
    try (Store store = Store.open(file)) {
      InventedStore.begin(store, 20);
      watcher.start();
      shownWhen(one -> true);
      watcher.addNote("bypass moved", trouble -> {});
      assertThat(shownWhen(one -> !one.recording().notes().isEmpty()).recording().notes())
          .extracting(Note::text)
          .containsExactly("bypass moved");
    }
  }

  @Test
  void aDatabaseThatTookItsPlaceIsShown() throws Exception {
    try (Store store = Store.open(file)) {
      InventedStore.begin(store, 20);
      watcher.start();
      shownWhen(one -> true);
      Path other = folder.resolve("other.db");
      try (Store another = Store.open(other)) {
        InventedStore.begin(another, 5);
      }
      Files.move(other, file, StandardCopyOption.REPLACE_EXISTING);
      Files.deleteIfExists(folder.resolve("watch.db-wal"));
      Files.deleteIfExists(folder.resolve("watch.db-shm"));
      shownWhen(one -> one.recording().endMs() < InventedNight.minute(6));
    }
  }

  @Test
  void aDatabaseThatIsGoneIsToldAndOneThatComesBackIsShown() throws Exception {
    try (Store store = Store.open(file)) {
      InventedStore.begin(store, 5);
    }
    watcher.start();
    shownWhen(one -> true);
    Path aside = folder.resolve("aside.db");
    Files.move(file, aside);
    await(one -> one.trouble().contains("no such database"));
    Files.move(aside, file);
    shownWhen(one -> true);
  }

  private Snapshot.Shown shownWhen(Predicate<Snapshot.Shown> holds) throws InterruptedException {
    return await(one -> one.snapshot().flatMap(Snapshot::shown).filter(holds).isPresent())
        .snapshot()
        .flatMap(Snapshot::shown)
        .orElseThrow();
  }

  private Told await(Predicate<Told> holds) throws InterruptedException {
    while (true) {
      Told one = told.poll(PATIENCE_S, TimeUnit.SECONDS);
      assertThat(one).as("the watcher tells").isNotNull();
      if (holds.test(one)) {
        return one;
      }
    }
  }
}
