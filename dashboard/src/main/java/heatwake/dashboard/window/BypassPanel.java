package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.BypassAdvice;
import java.awt.Font;
import java.util.Optional;
import javax.swing.JPanel;
import javax.swing.JScrollPane;

/** Helps to set the bypass: where the rise stands, where it belongs, what to do. */
final class BypassPanel {
  private final Column column = new Column();
  private final JScrollPane pane = column.scrolling();
  private Optional<BypassAdvice> shown;

  JScrollPane pane() {
    return pane;
  }

  @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
  void show(Optional<BypassAdvice> advice) {
    if (advice.equals(shown)) {
      return;
    }
    shown = advice;
    column.removeAll();
    JPanel card = Column.card();
    card.setName("bypass");
    if (advice.isEmpty()) {
      card.add(
          Text.paragraph(
              "Shown once the compressor has run: how much of the water goes through the heater, and"
                  + " the rise that means it has its nameplate flow."),
          "wmin 10");
    } else {
      fill(card, advice.get());
    }
    column.addCard(card);
    column.revalidate();
    column.repaint();
  }

  private static void fill(JPanel card, BypassAdvice advice) {
    card.add(Text.line("Through the heater", 13f, Font.PLAIN, Palette.FAINT_INK));
    card.add(Text.line(advice.share(), 34f, Font.BOLD, Palette.INK));
    card.add(Text.line("Rise through the heater", 13f, Font.PLAIN, Palette.FAINT_INK), "gaptop 8");
    card.add(Text.line(advice.rise(), 34f, Font.BOLD, Theme.of(advice.tone())));
    advice.scale().ifPresent(scale -> card.add(new RiseScale(scale), "growx, h 88!, gaptop 4"));
    if (!advice.range().isEmpty()) {
      card.add(
          Text.paragraph(
              "At today's expected heat, " + advice.range() + " means nameplate flow.",
              14.5f,
              Font.PLAIN,
              Palette.FAINT_INK),
          "wmin 10");
    }
    card.add(
        Text.paragraph(advice.advice(), 16f, Font.BOLD, Theme.of(advice.tone())),
        "wmin 10, gaptop 8");
  }
}
