package heatwake.dashboard.window;

import heatwake.dashboard.chart.StripStack;
import heatwake.dashboard.chart.TimeRange;
import java.awt.event.KeyEvent;
import java.util.function.Consumer;
import javax.swing.JComponent;
import javax.swing.KeyStroke;

/**
 * The charts from the keyboard: plus and minus look closer and farther around the middle, the
 * arrows go along the run, Home shows all of it.
 */
final class ChartKeys {
  private static final double CLOSER = 0.8;
  private static final double FARTHER = 1 / CLOSER;

  /** Of what is on the screen, three quarters stay there. */
  private static final double STEP = 0.25;

  private final ChartPane pane;
  private final ChartPane.Listener listener;

  private ChartKeys(ChartPane pane, ChartPane.Listener listener) {
    this.pane = pane;
    this.listener = listener;
  }

  static void bind(ChartPane pane, ChartPane.Listener listener) {
    ChartKeys keys = new ChartKeys(pane, listener);
    keys.on(range -> listener.zoomed(middle(range), CLOSER), '+', '=');
    keys.on(range -> listener.zoomed(middle(range), FARTHER), '-');
    keys.on(KeyEvent.VK_LEFT, range -> keys.go(range, -STEP));
    keys.on(KeyEvent.VK_RIGHT, range -> keys.go(range, STEP));
    keys.on(KeyEvent.VK_HOME, range -> listener.wholeWanted());
  }

  private void on(Consumer<TimeRange> act, char... typed) {
    for (char one : typed) {
      on(KeyStroke.getKeyStroke(one), act);
    }
  }

  private void on(int key, Consumer<TimeRange> act) {
    on(KeyStroke.getKeyStroke(key, 0), act);
  }

  private void on(KeyStroke stroke, Consumer<TimeRange> act) {
    pane.registerKeyboardAction(
        event -> pane.onScreen().map(StripStack::range).ifPresent(act),
        stroke,
        JComponent.WHEN_FOCUSED);
  }

  private void go(TimeRange range, double share) {
    long step = Math.round(range.lengthMs() * share);
    listener.selected(TimeRange.between(range.fromMs() + step, range.toMs() + step));
  }

  private static long middle(TimeRange range) {
    return range.fromMs() + range.lengthMs() / 2;
  }
}
