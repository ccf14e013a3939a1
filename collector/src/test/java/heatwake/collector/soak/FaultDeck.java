package heatwake.collector.soak;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;

/** All faults in random order, again and again, so that none is left out for long. */
final class FaultDeck {
  private final Random random;
  private final List<Fault> all =
      new ArrayList<>(
          List.of(
              new RecorderKilled(),
              new RecorderStopped(),
              new CablePulled(),
              new CableElsewhere(),
              new NetworkCut(),
              new BrokerRestarted(),
              new BrokerAway(),
              new BrokerKilled(),
              new DatabaseLocked(),
              new LineNoise(),
              new HalfLines(),
              new StrangeMessages(),
              new Megabyte(),
              new OldAndUnorderedStamps(),
              new WrongProbeClock(),
              new NoteWritten()));
  private final List<Fault> left = new ArrayList<>();
  private final Map<String, Integer> struck = new TreeMap<>();

  FaultDeck(SoakedSite site, Random random) {
    this.random = random;
    if (site.disk().canBeFull()) {
      all.add(new DiskFull());
    } else {
      System.out.println("soak without a full disk: needs the right to mount one (root)");
    }
    if (site.clock().isPresent()) {
      all.add(new ClockSet());
    } else {
      System.out.println("soak without setting the clock: needs libfaketime");
    }
  }

  Fault draw() {
    if (left.isEmpty()) {
      left.addAll(all);
      Collections.shuffle(left, random);
    }
    Fault fault = left.remove(left.size() - 1);
    struck.merge(fault.name(), 1, Integer::sum);
    return fault;
  }

  /** How often each was drawn. */
  Map<String, Integer> struck() {
    return struck;
  }
}
