package heatwake.dashboard.window;

import java.awt.Component;
import java.awt.Cursor;
import java.awt.Rectangle;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import java.awt.event.KeyEvent;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import javax.swing.JComponent;
import javax.swing.KeyStroke;

/** Makes a card answer the finger, and Enter or the space bar once the keyboard has come to it. */
final class Touchable {
  private Touchable() {}

  /** Lets a card do something; whatever was added to it before answers too. */
  static void make(JComponent card, Runnable act) {
    MouseAdapter touch =
        new MouseAdapter() {
          @Override
          public void mousePressed(MouseEvent event) {
            act.run();
          }
        };
    card.addMouseListener(touch);
    card.setCursor(Cursor.getPredefinedCursor(Cursor.HAND_CURSOR));
    for (Component child : card.getComponents()) {
      child.addMouseListener(touch);
      child.setCursor(Cursor.getPredefinedCursor(Cursor.HAND_CURSOR));
    }
    for (int key : new int[] {KeyEvent.VK_ENTER, KeyEvent.VK_SPACE}) {
      card.registerKeyboardAction(
          event -> act.run(), KeyStroke.getKeyStroke(key, 0), JComponent.WHEN_FOCUSED);
    }
    card.setFocusable(true);
    card.addFocusListener(
        new FocusListener() {
          @Override
          public void focusGained(FocusEvent event) {
            card.setBackground(Theme.CHOSEN);
            card.scrollRectToVisible(new Rectangle(0, 0, card.getWidth(), card.getHeight()));
          }

          @Override
          public void focusLost(FocusEvent event) {
            card.setBackground(Theme.CARD);
          }
        });
  }
}
