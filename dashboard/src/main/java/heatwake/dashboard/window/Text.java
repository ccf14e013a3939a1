package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.Unparted;
import java.awt.Color;
import java.awt.Font;
import java.awt.Insets;
import javax.swing.JLabel;
import javax.swing.JTextArea;
import javax.swing.text.DefaultCaret;

/**
 * Labels. What a probe, a note or a rig says is shown letter for letter: Swing would read text that
 * begins like HTML as HTML, so that is switched off on every one.
 */
final class Text {
  private Text() {}

  /** A line of text. */
  static JLabel line(String text, float size, int style, Color color) {
    JLabel label = new JLabel();
    plainText(label);
    label.setText(text);
    label.setFont(Theme.font(style, size));
    label.setForeground(color);
    return label;
  }

  static JLabel line(String text) {
    return line(text, Theme.TEXT, Font.PLAIN, Palette.INK);
  }

  /** Makes a label show its text letter for letter. */
  static void plainText(JLabel label) {
    label.putClientProperty("html.disable", true);
  }

  /** A paragraph that wraps. */
  static JTextArea paragraph(String text, float size, int style, Color color) {
    JTextArea area = new JTextArea();
    area.setLineWrap(true);
    area.setWrapStyleWord(true);
    area.setEditable(false);
    area.setFocusable(false);
    area.setOpaque(false);
    area.setBorder(null);
    area.setMargin(new Insets(0, 0, 0, 0));
    area.setFont(Theme.font(style, size));
    area.setForeground(color);
    area.setHighlighter(null);
    // A caret that follows its text would scroll the panel about.
    if (area.getCaret() instanceof DefaultCaret caret) {
      caret.setUpdatePolicy(DefaultCaret.NEVER_UPDATE);
    }
    area.setText(Unparted.of(text));
    return area;
  }

  static JTextArea paragraph(String text) {
    return paragraph(text, Theme.TEXT, Font.PLAIN, Palette.INK);
  }
}
