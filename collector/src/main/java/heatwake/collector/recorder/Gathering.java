package heatwake.collector.recorder;

import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.MessageMark;
import heatwake.collector.probe.Reading;
import heatwake.collector.store.Store;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Deliveries gathered for one commit. */
final class Gathering {
  private static final Logger LOG = LoggerFactory.getLogger(Gathering.class);

  private static final int MOST_READINGS = 20_000;

  /** Brokers leave some tens of messages unacknowledged: so many that wait are reason to commit. */
  private static final int MOST_AWAITED = 5;

  private final Map<RecordedRun, List<Reading>> byRun = new LinkedHashMap<>();
  private final List<Delivery> deliveries = new ArrayList<>();
  private final List<MessageMark> marks = new ArrayList<>();
  private int weight;
  private int awaited;

  void add(RecordedRun run, Delivery delivery, long arrivedMs, int itsWeight) {
    weight += itsWeight;
    if (run.isOver()) {
      // Not stored, so not acknowledged either: whoever can keeps it for the next run.
      return;
    }
    deliveries.add(delivery);
    awaited += delivery.isAwaited() ? 1 : 0;
    List<Reading> ofRun = byRun.computeIfAbsent(run, first -> new ArrayList<>());
    int before = ofRun.size();
    run.pass(delivery.readings(), arrivedMs, ofRun);
    if (delivery.mark().isPresent() && holdsArrivals(ofRun.subList(before, ofRun.size()))) {
      marks.add(delivery.mark().get());
    }
  }

  /** Whether some could not be known again by channel, time and value. */
  private static boolean holdsArrivals(List<Reading> passed) {
    for (Reading reading : passed) {
      if (!reading.stampedByProbe()) {
        return true;
      }
    }
    return false;
  }

  boolean isEmpty() {
    return weight == 0;
  }

  boolean isFull() {
    return weight >= MOST_READINGS;
  }

  /** Whether somebody is to be told that it is safe. */
  boolean isAwaited() {
    return awaited > 0;
  }

  /** Whether somebody should not be kept waiting for more to come. */
  boolean isUrgent() {
    return awaited >= MOST_AWAITED;
  }

  /** Memory to give back once it is on disk. */
  int weight() {
    return weight;
  }

  void write(Store store) {
    byRun.forEach(
        (run, readings) -> {
          if (!readings.isEmpty()) {
            run.write(store, readings);
          }
        });
    if (!marks.isEmpty()) {
      store.addDelivered(marks);
    }
  }

  /** It is on disk: tells those who wait. */
  void confirm() {
    byRun.keySet().forEach(RecordedRun::confirm);
    deliveries.forEach(Gathering::acknowledge);
  }

  private static void acknowledge(Delivery delivery) {
    try {
      delivery.whenDurable().run();
    } catch (RuntimeException e) {
      // The sender will send again; what is stored stays stored.
      LOG.warn("an acknowledgement could not be given: {}", e.getMessage());
    }
  }
}
