package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.FigureRow;
import java.awt.Font;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;

/** Tables of figures with their uncertainties. */
final class FiguresPanel {
  private final Column column = new Column();
  private final JScrollPane pane = column.scrolling();
  private Map<String, List<FigureRow>> shown;

  JScrollPane pane() {
    return pane;
  }

  /** Shows tables by their headings, in order. */
  void show(Map<String, List<FigureRow>> tables) {
    if (tables.equals(shown)) {
      return;
    }
    shown = new LinkedHashMap<>(tables);
    column.removeAll();
    tables.forEach((heading, rows) -> column.addCard(table(heading, rows)));
    column.addCard(
        Text.paragraph(
            "± holds in about 95 of 100 cases (expanded uncertainty, k = 2).",
            13f,
            Font.PLAIN,
            Palette.FAINT_INK));
    column.revalidate();
    column.repaint();
  }

  private static JPanel table(String heading, List<FigureRow> rows) {
    JPanel card = Column.card();
    card.add(Text.line(heading, Theme.TEXT, Font.BOLD, Palette.INK));
    if (rows.isEmpty()) {
      card.add(Text.line("None yet.", 14f, Font.PLAIN, Palette.FAINT_INK));
    }
    for (FigureRow row : rows) {
      JPanel line = new JPanel(new MigLayout("insets 0, gap 8 0, fillx", "[grow,fill][]"));
      line.setOpaque(false);
      line.add(Text.paragraph(row.name(), 14.5f, Font.PLAIN, Palette.INK), "wmin 10");
      line.add(Text.line(row.value(), 15.5f, Font.BOLD, Palette.INK), "aligny top, wrap");
      if (!row.remark().isEmpty()) {
        line.add(
            Text.paragraph(row.remark(), 13f, Font.PLAIN, Palette.FAINT_INK), "span 2, wmin 10");
      }
      card.add(line, "wmin 10, gaptop 2");
    }
    return card;
  }
}
