package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.Tile;
import heatwake.dashboard.present.Tiles;
import java.awt.Dimension;
import java.util.ArrayList;
import java.util.List;
import javax.swing.JPanel;

/** The figures that decide most, side by side: as many as fit. */
final class TileRow extends JPanel {
  private static final int LEAST_WIDTH = 128;
  private static final int LEAD_WIDTH = 168;
  static final int HEIGHT = 88;
  private static final int GAP = 8;

  private final TileView lead = new TileView(24f);
  private final List<TileView> figures = new ArrayList<>();

  TileRow() {
    super(null);
    setOpaque(false);
    setName("tiles");
    add(lead);
  }

  void show(Tiles tiles) {
    lead.show(tiles.lead());
    lead.setGround(tiles.phase().map(Palette::of).orElse(Theme.CARD));
    List<Tile> rest = tiles.figures();
    while (figures.size() < rest.size()) {
      TileView made = new TileView(28f);
      figures.add(made);
      add(made);
    }
    for (int i = 0; i < figures.size(); i++) {
      figures.get(i).setVisible(i < rest.size());
      if (i < rest.size()) {
        figures.get(i).show(rest.get(i));
      }
    }
    revalidate();
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(400, HEIGHT);
  }

  @Override
  public void doLayout() {
    lead.setBounds(0, 0, LEAD_WIDTH, HEIGHT);
    long wanted = figures.stream().filter(TileView::isVisible).count();
    int room = getWidth() - LEAD_WIDTH;
    int fit = fitting((int) wanted, room);
    for (int i = 0; i < figures.size(); i++) {
      // By shares of the whole, so that the last tile ends at the edge.
      int left = fit == 0 ? 0 : LEAD_WIDTH + GAP + i * room / fit;
      int right = fit == 0 ? 0 : LEAD_WIDTH + (i + 1) * room / fit;
      figures.get(i).setBounds(left, 0, i < fit ? right - left : 0, HEIGHT);
    }
  }

  /** As many tiles as show their figure and its unit in full; the longest sets the width of all. */
  private int fitting(int wanted, int room) {
    int fit = 0;
    int widest = LEAST_WIDTH;
    while (fit < wanted) {
      widest = Math.max(widest, figures.get(fit).leastWidth());
      if ((fit + 1) * (widest + GAP) > room) {
        break;
      }
      fit++;
    }
    return Math.min(wanted, Math.max(1, fit));
  }
}
