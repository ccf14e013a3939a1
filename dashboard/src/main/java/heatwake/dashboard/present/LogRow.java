package heatwake.dashboard.present;

import heatwake.analysis.series.Note;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.RunEvent;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A line of a run's log: a note, or something that happened to the recording.
 *
 * @param atMs when, UTC milliseconds
 * @param when the same in words, with its length where it lasted
 * @param text what a person should read
 * @param isNote whether a person typed it
 */
public record LogRow(long atMs, String when, String text, boolean isNote) {
  /** The log of a run, the latest first. */
  public static List<LogRow> of(Recording recording, Moment moment) {
    List<LogRow> rows = new ArrayList<>();
    for (Note note : recording.notes()) {
      rows.add(
          new LogRow(
              note.timeMs(), moment.shortDayAndTime(note.timeMs()) + "  note", note.text(), true));
    }
    for (RunEvent event : recording.events()) {
      rows.add(new LogRow(event.startMs(), when(event, moment), text(event), false));
    }
    rows.sort(Comparator.comparingLong(LogRow::atMs).reversed());
    return rows;
  }

  private static String when(RunEvent event, Moment moment) {
    String start = moment.shortDayAndTime(event.startMs());
    if (event.endMs().isEmpty()) {
      return start;
    }
    long lengthMs = event.endMs().getAsLong() - event.startMs();
    return lengthMs < 1000 ? start : start + ", " + Moment.duration(lengthMs);
  }

  private static String text(RunEvent event) {
    return event.count() > 1 ? event.text() + " (" + event.count() + " times)" : event.text();
  }
}
