package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.BypassAdvice;
import heatwake.dashboard.present.Tone;
import java.awt.Font;
import java.util.Optional;
import javax.swing.JPanel;
import javax.swing.JScrollPane;

/** Helps to set the bypass: where flow or rise stands, where it belongs, what to do. */
final class BypassPanel {
  private static final String FLOW = "Flow through the heater";
  private static final String RISE = "Rise through the heater";

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
                  + " the flow or the rise that means it has its nameplate flow."),
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
    // What the advice goes by stands first, in its colour.
    figure(
        card,
        advice.flow().isPresent() ? FLOW : RISE,
        advice.flow().orElse(advice.rise()),
        advice.tone());
    advice.scale().ifPresent(scale -> card.add(new BypassScale(scale), "growx, h 88!, gaptop 4"));
    advice
        .range()
        .ifPresent(
            range ->
                card.add(
                    Text.paragraph(range.sentence(), 14.5f, Font.PLAIN, Palette.FAINT_INK),
                    "wmin 10"));
    advice.flow().ifPresent(flow -> figure(card, RISE, advice.rise(), Tone.PLAIN));
    card.add(
        Text.paragraph(advice.advice(), 16f, Font.BOLD, Theme.of(advice.tone())),
        "wmin 10, gaptop 8");
  }

  private static void figure(JPanel card, String name, String value, Tone tone) {
    card.add(Text.line(name, 13f, Font.PLAIN, Palette.FAINT_INK), "gaptop 8");
    card.add(Text.line(value, 34f, Font.BOLD, Theme.of(tone)));
  }
}
