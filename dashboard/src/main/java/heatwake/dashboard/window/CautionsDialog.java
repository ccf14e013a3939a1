package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.Cautions;
import java.awt.BorderLayout;
import java.awt.Font;
import java.awt.Window;
import java.awt.event.KeyEvent;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JDialog;
import javax.swing.JPanel;
import javax.swing.KeyStroke;
import net.miginfocom.swing.MigLayout;

/** The cautions, within reach at any moment. */
final class CautionsDialog {
  private CautionsDialog() {}

  static JDialog over(Window owner) {
    JDialog dialog = new JDialog(owner, "Safety");
    dialog.setName("cautions");
    Column column = new Column();
    JPanel card = Column.card();
    card.add(Text.line("Before you touch anything", 19f, Font.BOLD, Palette.INK));
    Cautions.all().forEach(one -> card.add(Bullet.of(one), "wmin 10, gaptop 4"));
    column.addCard(card);
    JButton close = new JButton("Close");
    close.addActionListener(event -> dialog.dispose());
    JPanel foot = new JPanel(new MigLayout("insets 0 10 10 10, fillx", "push[]"));
    foot.add(close);
    dialog.add(column.scrolling(), BorderLayout.CENTER);
    dialog.add(foot, BorderLayout.SOUTH);
    dialog.getRootPane().setDefaultButton(close);
    dialog
        .getRootPane()
        .registerKeyboardAction(
            event -> dialog.dispose(),
            KeyStroke.getKeyStroke(KeyEvent.VK_ESCAPE, 0),
            JComponent.WHEN_IN_FOCUSED_WINDOW);
    dialog.setSize(620, 480);
    dialog.setLocationRelativeTo(owner);
    return dialog;
  }
}
