package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import java.awt.Font;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** A paragraph with a dot before it. */
final class Bullet {
  private Bullet() {}

  static JPanel of(String text) {
    JPanel row = new JPanel(new MigLayout("insets 0, gap 6 0, fillx", "[][grow,fill]"));
    row.setOpaque(false);
    row.add(Text.line("•", Theme.TEXT, Font.BOLD, Palette.FAINT_INK), "aligny top");
    row.add(Text.paragraph(text, 14.5f, Font.PLAIN, Palette.INK), "wmin 10");
    return row;
  }
}
