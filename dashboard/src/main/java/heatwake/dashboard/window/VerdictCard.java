package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.VerdictWords;
import java.awt.Font;
import javax.swing.BorderFactory;
import javax.swing.JPanel;

/** The verdict with its reasons. */
final class VerdictCard {
  private VerdictCard() {}

  static JPanel of(VerdictWords words) {
    JPanel card = Column.card();
    card.setBorder(
        BorderFactory.createCompoundBorder(
            BorderFactory.createLineBorder(Theme.EDGE),
            BorderFactory.createMatteBorder(0, 6, 0, 0, Theme.of(words.tone()))));
    card.add(Text.line("Verdict", 13f, Font.PLAIN, Palette.FAINT_INK));
    card.add(Text.paragraph(words.headline(), 19f, Font.BOLD, Theme.of(words.tone())), "wmin 10");
    if (!words.sureness().isEmpty()) {
      card.add(Text.line(words.sureness(), 14f, Font.PLAIN, Palette.FAINT_INK));
    }
    for (String reason : words.because()) {
      card.add(Bullet.of(reason), "wmin 10, gaptop 2");
    }
    if (!words.wouldDecide().isEmpty()) {
      card.add(
          Text.line("What would make it surer", 13f, Font.PLAIN, Palette.FAINT_INK), "gaptop 6");
      for (String step : words.wouldDecide()) {
        card.add(Bullet.of(step), "wmin 10");
      }
    }
    return card;
  }
}
