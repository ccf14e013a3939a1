package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.StartupRow;
import java.awt.Font;
import java.util.List;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;

/** The start-up list, which ticks itself off. */
final class StartupPanel {
  private final Column column = new Column();
  private final JScrollPane pane = column.scrolling();
  private List<StartupRow> shown;

  JScrollPane pane() {
    return pane;
  }

  void show(List<StartupRow> rows) {
    if (rows.equals(shown)) {
      return;
    }
    shown = List.copyOf(rows);
    column.removeAll();
    JPanel card = Column.card();
    card.setName("startup");
    card.add(
        Text.paragraph(
            rows.isEmpty()
                ? "The start-up list fills from the readings."
                : StartupRow.summary(rows),
            14.5f,
            Font.PLAIN,
            Palette.FAINT_INK),
        "wmin 10, gapbottom 4");
    rows.forEach(row -> card.add(line(row), "wmin 10, gaptop 3"));
    column.addCard(card);
    column.revalidate();
    column.repaint();
  }

  private static JPanel line(StartupRow row) {
    JPanel line =
        new JPanel(new MigLayout("insets 0, gap 8 0, fillx, hidemode 3", "[]8[grow,fill]8[]"));
    line.setOpaque(false);
    line.add(new JLabel(new CheckMark(row.result(), 22)), "aligny top, spany 2");
    line.add(Text.paragraph(row.title(), 15.5f, Font.BOLD, Palette.INK), "wmin 10");
    String right = row.time().isEmpty() ? row.word() : row.time();
    line.add(
        Text.line(right, 13f, Font.PLAIN, CheckMark.colorOf(row.result())), "aligny top, wrap");
    line.add(Text.paragraph(row.evidence(), 14f, Font.PLAIN, Palette.FAINT_INK), "span 2, wmin 10");
    return line;
  }
}
