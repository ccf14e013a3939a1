package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.LogRow;
import java.awt.Font;
import java.util.List;
import javax.swing.JPanel;
import javax.swing.JScrollPane;

/** Notes and what happened to the recording, in order of time, the latest first. */
final class LogPanel {
  private final Column column = new Column();
  private final JScrollPane pane = column.scrolling();
  private List<LogRow> shown;

  JScrollPane pane() {
    return pane;
  }

  void show(List<LogRow> rows) {
    if (rows.equals(shown)) {
      return;
    }
    shown = List.copyOf(rows);
    column.removeAll();
    JPanel card = Column.card();
    card.setName("log");
    if (rows.isEmpty()) {
      card.add(Text.paragraph("No notes, and nothing happened to the recording."), "wmin 10");
    }
    for (LogRow row : rows) {
      card.add(Text.line(row.when(), 13f, Font.PLAIN, Palette.FAINT_INK), "gaptop 4");
      card.add(
          Text.paragraph(
              row.text(), Theme.TEXT, row.isNote() ? Font.BOLD : Font.PLAIN, Palette.INK),
          "wmin 10");
    }
    column.addCard(card);
    column.revalidate();
    column.repaint();
  }
}
