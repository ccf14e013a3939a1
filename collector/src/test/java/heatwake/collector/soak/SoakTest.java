package heatwake.collector.soak;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.peer.Eventually;
import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * A recorder process with a broker inside, a serial cable and a Mosquitto broker behind a network,
 * with faults at random, and a counter per channel on the sending side. A quarter of a minute in
 * the everyday build; for longer: {@code mvn -pl collector -am test -Dtest=SoakTest
 * -Dheatwake.soak.seconds=3600 -Dsurefire.failIfNoSpecifiedTests=false}. Needs root to make the
 * disk full.
 *
 * <p>Owed are MQTT messages that a broker, or the one inside the recorder, acknowledged to their
 * sender, and serial lines, but for those sent while the recorder was away or the line disturbed: a
 * line has nobody who keeps it. A database that cannot be written is no excuse. What is missing
 * although it was sent, but is not owed, is counted apart.
 */
class SoakTest {
  private static final long SECONDS = Long.getLong("heatwake.soak.seconds", 15);

  /** How long before a fault a serial reading must be sent to be owed: the commit and a margin. */
  private static final long COMMIT_MS = 2000;

  private static final long LEAST_READINGS_IN_A_RUN = 1000;

  @TempDir private Path folder;

  private final long seed = Long.getLong("heatwake.soak.seed", System.nanoTime());
  private final List<Trouble> troubles = new ArrayList<>();
  private SoakedSite site;

  /** A time in which serial lines may get lost. */
  private record Trouble(long startMs, long endMs) {
    boolean costs(Senders.Line line) {
      return line.sentMs() > startMs - COMMIT_MS && line.sentMs() <= endMs;
    }
  }

  @Test
  @Timeout(48 * 3600)
  void nothingOwedIsLostDoubledOrAltered() throws Exception {
    Random random = new Random(seed);
    // At some 150 readings a second about fifty cuts, however long it takes.
    long readingsInARun = Math.max(LEAST_READINGS_IN_A_RUN, 3 * SECONDS);
    try (SoakedSite soaked = new SoakedSite(folder, random, readingsInARun)) {
      site = soaked;
      FaultDeck deck = new FaultDeck(site, random);
      long beganMs = System.currentTimeMillis();
      try (Senders senders = new Senders(site)) {
        awaitAllHeard("the start");
        senders.recorderHasSubscribed();
        troubles.add(new Trouble(beganMs, System.currentTimeMillis()));
        strike(deck, senders);
        senders.end();
        oweQuietLines(senders.lines());
      }
      try {
        Eventually.that("all that is owed", this::isAllThere);
      } finally {
        report(deck);
      }
      site.recorder().stop();
      check();
    }
  }

  /** Fault after fault until the time is over. */
  private void strike(FaultDeck deck, Senders senders) throws Exception {
    long endNs = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS);
    while (System.nanoTime() - endNs < 0 && !senders.haveFailed()) {
      Thread.sleep(COMMIT_MS);
      site.pause(1000);
      long startMs = System.currentTimeMillis();
      Fault fault = deck.draw();
      fault.strike(site);
      awaitAllHeard(fault.name());
      if (fault.costsLines()) {
        troubles.add(new Trouble(startMs, System.currentTimeMillis()));
      }
    }
    Thread.sleep(COMMIT_MS);
  }

  private boolean isAllThere() {
    count();
    return tallies().stream().allMatch(one -> one.lost() == 0) && site.strays().lost() == 0;
  }

  private List<Tally> tallies() {
    return List.of(site.serial(), site.mqtt3(), site.mqtt5(), site.inside());
  }

  private void report(FaultDeck deck) {
    System.out.println("soak of " + SECONDS + " s, seed " + seed + ", faults " + deck.struck());
    tallies().forEach(System.out::println);
    System.out.println(site.strays());
    try (Store store = Store.openExisting(site.database())) {
      System.out.println(
          store.runs().size() + " runs, " + site.notes().written() + " notes written");
    }
  }

  private void check() throws Exception {
    count();
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + site.database());
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery("PRAGMA integrity_check")) {
      assertThat(row.getString(1)).isEqualTo("ok");
    }
    for (Tally one : tallies()) {
      assertThat(one.lost()).as("lost of " + one).isZero();
      assertThat(one.doubled()).as("doubled of " + one).isZero();
      assertThat(one.again()).as("again in a later run of " + one).isZero();
      assertThat(one.altered()).as("altered of " + one).isZero();
    }
    assertThat(site.strays().lost()).as("lost of " + site.strays()).isZero();
    assertThat(site.strays().altered()).as("altered of " + site.strays()).isZero();
    assertThat(site.notes().found()).isEqualTo(site.notes().written());
    try (Store store = Store.openExisting(site.database())) {
      assertThat(store.runsWithoutEnd()).isEmpty();
    }
  }

  /** Waits until something that is sent from now on has come from every sender. */
  private void awaitAllHeard(String after) throws Exception {
    Map<Channel, Long> silent = new TreeMap<>();
    tallies().forEach(one -> silent.put(one.channel(), Tally.timeMs(one.last())));
    try {
      Eventually.that(
          "all heard again after " + after,
          () -> {
            site.recorder().mustLive();
            Map<Channel, Long> last = lastStored();
            silent.entrySet().removeIf(one -> last.getOrDefault(one.getKey(), 0L) > one.getValue());
            return silent.isEmpty();
          });
    } catch (AssertionError deaf) {
      System.out.println("seed " + seed + ", not heard after " + after + ": " + silent.keySet());
      System.out.println(site.recorder().lastSaid());
      throw deaf;
    }
  }

  private Map<Channel, Long> lastStored() {
    Map<Channel, Long> last = new TreeMap<>();
    if (!Files.exists(site.database())) {
      return last;
    }
    try (Store store = Store.openExisting(site.database())) {
      List<RunSummary> runs = store.runs();
      for (RunSummary run : runs.subList(Math.max(0, runs.size() - 3), runs.size())) {
        store.forEachReading(
            run.id(), (channel, timeMs, value) -> last.merge(channel, timeMs, Math::max));
      }
    }
    return last;
  }

  /** Lines sent while the recorder heard them, and long enough before it did not. */
  private void oweQuietLines(List<Senders.Line> lines) {
    for (Senders.Line line : lines) {
      if (troubles.stream().noneMatch(one -> one.costs(line))) {
        site.serial().owe(line.number());
      }
    }
  }

  private void count() {
    Map<Channel, Tally> byChannel = new TreeMap<>();
    for (Tally one : tallies()) {
      one.recount();
      byChannel.put(one.channel(), one);
    }
    site.strays().recount();
    try (Store store = Store.openExisting(site.database())) {
      for (RunSummary run : store.runs()) {
        store.forEachReading(
            run.id(),
            (channel, timeMs, value) -> {
              if (channel == Strays.CHANNEL) {
                site.strays().found(value);
              } else {
                byChannel.get(channel).found(run.id(), timeMs, value);
              }
            });
      }
    }
  }
}
