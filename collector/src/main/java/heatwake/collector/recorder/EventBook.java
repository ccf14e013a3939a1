package heatwake.collector.recorder;

import heatwake.analysis.series.EventKind;
import heatwake.collector.store.Store;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.function.Supplier;
import java.util.regex.Pattern;

/**
 * Events of one run on their way to the store. Repeats of one kind on one subject are gathered into
 * one event with a count, so that a probe that sends garbage all night makes some lines, not a
 * million. Safe to call from any thread; bounded.
 */
final class EventBook {
  /** A pause longer than this between two of a kind makes them two events. */
  private static final long SAME_EVENT_MS = 60_000;

  /** More different events than this in the making go under one subject. */
  private static final int MOST_SUBJECTS = 500;

  private static final String OTHERS = "others";
  private static final int LONGEST_TEXT = 300;
  private static final int LONGEST_SUBJECT = 120;
  private static final Pattern NOT_SHOWN = Pattern.compile("[\\p{Cntrl}\\p{Cf}]+");

  private record Key(EventKind kind, String subject) {}

  /** One event being gathered. */
  private static final class Entry {
    private final Key key;
    private final boolean lasting;
    private final long startMs;
    private String text;
    private long latestMs;
    private long count = 1;
    private boolean over;
    private long version = 1;
    private long savedVersion;
    private OptionalLong row = OptionalLong.empty();

    private Entry(Key key, boolean lasting, long startMs, String text) {
      this.key = key;
      this.lasting = lasting;
      this.startMs = startMs;
      this.latestMs = startMs;
      this.text = text;
    }

    private boolean isChanged() {
      return version != savedVersion;
    }

    private OptionalLong endMs() {
      return lasting && !over ? OptionalLong.empty() : OptionalLong.of(latestMs);
    }
  }

  /** What was written of an entry, to be confirmed by the commit. */
  record Written(Object entry, long row, long version) {}

  private final Map<Key, Entry> happenings = new HashMap<>();
  private final Map<Key, Entry> conditions = new HashMap<>();
  private final List<Entry> finished = new ArrayList<>();

  /**
   * Something happened once.
   *
   * @param text made only if this is the first of its kind: a probe can be wrong with every reading
   */
  synchronized void happened(EventKind kind, String subject, long atMs, Supplier<String> text) {
    happened(kind, subject, atMs, text, 1);
  }

  /** Something happened that is an event of its own, never gathered with others. */
  synchronized void single(EventKind kind, String subject, long atMs, String text) {
    Entry entry =
        new Entry(
            new Key(kind, shown(subject, LONGEST_SUBJECT)), false, atMs, shown(text, LONGEST_TEXT));
    finished.add(entry);
  }

  /** Something happened some times at one moment. */
  synchronized void happened(
      EventKind kind, String subject, long atMs, Supplier<String> text, long times) {
    Key key = key(happenings, kind, subject);
    Entry entry = happenings.get(key);
    if (entry != null && atMs - entry.latestMs > SAME_EVENT_MS) {
      finished.add(entry);
      entry = null;
    }
    if (entry == null) {
      entry = new Entry(key, false, atMs, shown(text.get(), LONGEST_TEXT));
      entry.count = times;
      happenings.put(key, entry);
    } else {
      entry.count += times;
      entry.latestMs = Math.max(entry.latestMs, atMs);
      entry.version++;
    }
  }

  /** A condition began at a moment and lasts; a repeat while it lasts is counted. */
  synchronized void began(EventKind kind, String subject, long atMs, String text) {
    Key key = key(conditions, kind, subject);
    Entry entry = conditions.get(key);
    if (entry == null) {
      conditions.put(key, new Entry(key, true, atMs, shown(text, LONGEST_TEXT)));
    } else {
      entry.count++;
      entry.text = shown(text, LONGEST_TEXT);
      entry.version++;
    }
  }

  /** A condition is over; nothing if it had not begun. */
  synchronized void ended(EventKind kind, String subject, long atMs) {
    Entry entry = conditions.remove(new Key(kind, shown(subject, LONGEST_SUBJECT)));
    if (entry != null) {
      end(entry, atMs);
    }
  }

  private void end(Entry entry, long atMs) {
    entry.over = true;
    entry.latestMs = Math.max(entry.startMs, atMs);
    entry.version++;
    finished.add(entry);
  }

  /** Ends all that lasts, because the run ends; returns a book in which it goes on from there. */
  synchronized EventBook endAll(long atMs) {
    EventBook next = new EventBook();
    for (Entry entry : conditions.values()) {
      next.conditions.put(entry.key, new Entry(entry.key, true, atMs, entry.text));
      end(entry, atMs);
    }
    conditions.clear();
    return next;
  }

  /** Whether there is anything to write. */
  synchronized boolean isChanged() {
    return !finished.isEmpty()
        || happenings.values().stream().anyMatch(Entry::isChanged)
        || conditions.values().stream().anyMatch(Entry::isChanged);
  }

  /**
   * Writes what has changed into the commit that is under way.
   *
   * @return what to pass to {@link #confirm} once it is committed
   */
  synchronized List<Written> write(Store store, long run) {
    List<Written> written = new ArrayList<>();
    List<Entry> all = new ArrayList<>(finished);
    all.addAll(happenings.values());
    all.addAll(conditions.values());
    for (Entry entry : all) {
      if (!entry.isChanged()) {
        continue;
      }
      long row;
      if (entry.row.isPresent()) {
        row = entry.row.getAsLong();
        store.updateEvent(row, entry.endMs(), entry.count, entry.text);
      } else {
        row =
            store.addEvent(
                run,
                entry.key.kind(),
                entry.key.subject(),
                entry.startMs,
                entry.endMs(),
                entry.count,
                entry.text);
      }
      written.add(new Written(entry, row, entry.version));
    }
    return written;
  }

  /** What was written is committed. An entry that changed meanwhile is written again next time. */
  synchronized void confirm(List<Written> written) {
    for (Written one : written) {
      Entry entry = (Entry) one.entry();
      entry.row = OptionalLong.of(one.row());
      entry.savedVersion = one.version();
    }
    finished.removeIf(entry -> !entry.isChanged());
    long latestMs = happenings.values().stream().mapToLong(entry -> entry.latestMs).max().orElse(0);
    happenings
        .values()
        .removeIf(entry -> !entry.isChanged() && latestMs - entry.latestMs > SAME_EVENT_MS);
  }

  private static Key key(Map<Key, Entry> among, EventKind kind, String subject) {
    Key key = new Key(kind, shown(subject, LONGEST_SUBJECT));
    return among.containsKey(key) || among.size() < MOST_SUBJECTS ? key : new Key(kind, OTHERS);
  }

  /** An event's text as it is kept and shown: one line, no control characters, not too long. */
  static String line(String text) {
    return shown(text, LONGEST_TEXT);
  }

  /** Text that came from a wire, fit to be shown: one line, no control characters, not too long. */
  private static String shown(String text, int longest) {
    String clean = NOT_SHOWN.matcher(text).replaceAll(" ").strip();
    return clean.length() <= longest ? clean : clean.substring(0, longest) + "...";
  }
}
