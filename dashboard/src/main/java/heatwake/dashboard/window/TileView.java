package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.Tile;
import heatwake.dashboard.present.Tone;
import java.awt.Color;
import java.awt.Font;
import javax.swing.BorderFactory;
import javax.swing.JLabel;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** One large figure. */
final class TileView extends JPanel {
  private static final float SMALL = 13f;
  private static final int EDGE = 1;
  private static final int LEFT_INSET = 10;
  private static final int RIGHT_INSET = 6;
  private static final int UNIT_GAP = 5;

  private final JLabel name = Text.line("", SMALL, Font.PLAIN, Palette.FAINT_INK);
  private final JLabel value;
  private final JLabel unit = Text.line("", Theme.TEXT, Font.PLAIN, Palette.FAINT_INK);
  private final JLabel foot = Text.line("", SMALL, Font.PLAIN, Palette.FAINT_INK);

  TileView(float valueSize) {
    super(
        new MigLayout(
            "wrap, insets 6 "
                + LEFT_INSET
                + " 6 "
                + RIGHT_INSET
                + ", gap 0 0, fillx, novisualpadding",
            "[grow]"));
    value = Text.line("", valueSize, Font.BOLD, Palette.INK);
    setBackground(Theme.CARD);
    setBorder(BorderFactory.createLineBorder(Theme.EDGE));
    add(name, "wmin 0");
    // The number is never cut short for the sake of the words about it.
    add(value, "split 2, shrink 0, aligny baseline");
    add(unit, "wmin 0, gapleft " + UNIT_GAP + ", aligny baseline");
    add(foot, "wmin 0");
  }

  void show(Tile tile) {
    name.setText(tile.name());
    value.setText(tile.value());
    unit.setText(tile.unit());
    foot.setText(tile.foot().isEmpty() ? " " : tile.foot());
    value.setForeground(Theme.of(tile.tone()));
    boolean calls = tile.tone() == Tone.WARNING || tile.tone() == Tone.ALARM;
    foot.setForeground(calls ? Theme.of(tile.tone()) : Palette.FAINT_INK);
  }

  /** The width below which the figure's unit is cut short. */
  int leastWidth() {
    int between = unit.getText().isEmpty() ? 0 : UNIT_GAP;
    return 2 * EDGE
        + LEFT_INSET
        + value.getPreferredSize().width
        + between
        + unit.getPreferredSize().width
        + RIGHT_INSET;
  }

  /** Lays the tile on a colour, with all its text in ink. */
  void setGround(Color color) {
    setBackground(color);
    name.setForeground(Palette.INK);
    foot.setForeground(Palette.INK);
  }
}
