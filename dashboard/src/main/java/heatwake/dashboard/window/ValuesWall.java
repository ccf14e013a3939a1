package heatwake.dashboard.window;

import heatwake.dashboard.present.ReadingRow;
import heatwake.dashboard.present.Tile;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;

/** Every reading, as large as it gets, for reading from a step away. */
final class ValuesWall {
  private final Column column = new Column();
  private final JPanel tiles =
      new JPanel(new MigLayout("insets 0, gap 8, fillx, wrap 4", "[grow,fill,sg]", "[fill,sg]"));
  private final List<TileView> views = new ArrayList<>();
  private final JScrollPane pane;

  ValuesWall() {
    tiles.setOpaque(false);
    column.addCard(tiles);
    pane = column.scrolling();
  }

  JScrollPane pane() {
    return pane;
  }

  void show(List<ReadingRow> readings) {
    while (views.size() < readings.size()) {
      TileView made = new TileView(38f);
      views.add(made);
      tiles.add(made, "wmin 0");
    }
    while (views.size() > readings.size()) {
      tiles.remove(views.remove(views.size() - 1));
    }
    for (int i = 0; i < views.size(); i++) {
      ReadingRow row = readings.get(i);
      String foot = row.possible() ? row.age() : "cannot be true, " + row.age();
      views.get(i).show(new Tile(row.title(), row.value(), row.unit(), foot, row.tone()));
    }
    tiles.revalidate();
    tiles.repaint();
  }
}
