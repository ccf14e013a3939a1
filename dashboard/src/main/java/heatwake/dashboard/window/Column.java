package heatwake.dashboard.window;

import java.awt.Dimension;
import java.awt.Rectangle;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.Scrollable;
import javax.swing.border.Border;
import net.miginfocom.swing.MigLayout;

/** Cards one below the other, as wide as there is room, scrolling up and down only. */
final class Column extends JPanel implements Scrollable {
  private static final int SCROLL_STEP = 24;

  private static final Border AWAY = BorderFactory.createEmptyBorder(1, 1, 1, 1);
  private static final Border HERE = BorderFactory.createLineBorder(Theme.ACCENT);

  Column() {
    super(new MigLayout("wrap, fillx, insets 10, gap 0 8, novisualpadding", "[grow,fill]"));
    setBackground(Theme.GROUND);
  }

  /** Adds a card that may be made as narrow as the column. */
  void addCard(JComponent card) {
    add(card, "growx, wmin 10");
  }

  JScrollPane scrolling() {
    JScrollPane pane =
        new JScrollPane(
            this, JScrollPane.VERTICAL_SCROLLBAR_AS_NEEDED, JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
    pane.getViewport().setBackground(Theme.GROUND);
    pane.setBorder(AWAY);
    // The arrow keys scroll what has the focus, so the column can have it.
    setFocusable(true);
    addFocusListener(
        new FocusListener() {
          @Override
          public void focusGained(FocusEvent event) {
            pane.setBorder(HERE);
          }

          @Override
          public void focusLost(FocusEvent event) {
            pane.setBorder(AWAY);
          }
        });
    return pane;
  }

  /** A white card with a thin edge. */
  static JPanel card() {
    JPanel card =
        new JPanel(new MigLayout("wrap, fillx, insets 10 12 10 12, gap 0 4", "[grow,fill]"));
    card.setBackground(Theme.CARD);
    card.setBorder(BorderFactory.createLineBorder(Theme.EDGE));
    return card;
  }

  @Override
  public Dimension getPreferredScrollableViewportSize() {
    return getPreferredSize();
  }

  @Override
  public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
    return SCROLL_STEP;
  }

  @Override
  public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
    return Math.max(SCROLL_STEP, visible.height - SCROLL_STEP);
  }

  @Override
  public boolean getScrollableTracksViewportWidth() {
    return true;
  }

  @Override
  public boolean getScrollableTracksViewportHeight() {
    return false;
  }
}
