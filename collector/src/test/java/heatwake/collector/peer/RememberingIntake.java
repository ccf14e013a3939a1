package heatwake.collector.peer;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.EventKind;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Intake;
import heatwake.collector.probe.MessageMark;
import heatwake.collector.probe.Reading;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** An intake that keeps everything in memory; durable at once, or only when told. */
public final class RememberingIntake implements Intake {
  private final List<Reading> readings = new ArrayList<>();
  private final List<String> happened = new ArrayList<>();
  private final Map<String, String> lasting = new LinkedHashMap<>();
  private final List<String> begun = new ArrayList<>();
  private final List<Delivery> waiting = new ArrayList<>();
  private final List<MessageMark> marks = new ArrayList<>();
  private boolean durableAtOnce = true;

  @Override
  public long nowMs() {
    return System.currentTimeMillis();
  }

  @Override
  public void deliver(Delivery delivery) {
    synchronized (this) {
      readings.addAll(delivery.readings());
      if (!durableAtOnce) {
        waiting.add(delivery);
        return;
      }
    }
    makeDurable(delivery);
  }

  private void makeDurable(Delivery delivery) {
    synchronized (this) {
      delivery.mark().ifPresent(marks::add);
    }
    delivery.whenDurable().run();
  }

  /** From now on nothing is durable until {@link #commit}. */
  public synchronized void holdBack() {
    durableAtOnce = false;
  }

  /** From now on everything is durable at once. */
  public synchronized void durableAtOnce() {
    durableAtOnce = true;
  }

  /** Makes durable what was held back. */
  public void commit() {
    List<Delivery> owed;
    synchronized (this) {
      owed = List.copyOf(waiting);
      waiting.clear();
    }
    owed.forEach(this::makeDurable);
  }

  @Override
  public synchronized void happened(EventKind kind, String subject, String text) {
    happened.add(kind + " " + subject + ": " + text);
  }

  @Override
  public synchronized void began(EventKind kind, String subject, String text) {
    if (lasting.put(kind + " " + subject, text) == null) {
      begun.add(kind + " " + subject + ": " + text);
    }
  }

  @Override
  public synchronized void ended(EventKind kind, String subject) {
    lasting.remove(kind + " " + subject);
  }

  @Override
  public synchronized List<MessageMark> delivered(String session) {
    return marks.stream().filter(mark -> mark.session().equals(session)).toList();
  }

  @Override
  public synchronized void sessionIsNew(String session) {
    marks.removeIf(mark -> mark.session().equals(session));
  }

  public synchronized List<Reading> readings() {
    return List.copyOf(readings);
  }

  /** Values of one channel in order of arrival. */
  public synchronized List<Double> values(Channel channel) {
    return readings.stream().filter(one -> one.channel() == channel).map(Reading::value).toList();
  }

  /** Events that happened once, each as {@code KIND subject: text}. */
  public synchronized List<String> happened() {
    return List.copyOf(happened);
  }

  /** Conditions that ever began, each as {@code KIND subject: text}. */
  public synchronized List<String> begun() {
    return List.copyOf(begun);
  }

  /** Conditions that last, each as {@code KIND subject}. */
  public synchronized List<String> lasting() {
    return List.copyOf(lasting.keySet());
  }
}
