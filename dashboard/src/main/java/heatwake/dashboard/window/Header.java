package heatwake.dashboard.window;

import heatwake.analysis.series.Recording;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.RunRow;
import heatwake.dashboard.present.Tone;
import java.awt.Color;
import java.awt.Component;
import java.awt.Font;
import java.util.List;
import java.util.function.LongConsumer;
import javax.swing.BorderFactory;
import javax.swing.DefaultListCellRenderer;
import javax.swing.JButton;
import javax.swing.JComboBox;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/** The bar on top: site, run, whether it is being recorded, cautions. */
final class Header extends JPanel {
  private static final Color LIVE = new Color(0x1E8E5A);
  private static final Color OVER = new Color(0x35586B);

  private final Moment moment;
  private final JLabel site = Text.line("Heatwake", 22f, Font.BOLD, Theme.ON_HEADER);
  private final JLabel heater = Text.line("", Theme.TEXT, Font.PLAIN, Theme.FAINT_ON_HEADER);
  private final JLabel state = Text.line("", Theme.TEXT, Font.BOLD, Color.WHITE);
  private final JComboBox<RunRow> runs = new JComboBox<>();
  private boolean filling;

  Header(Moment moment, LongConsumer choose, Runnable cautions) {
    super(
        new MigLayout(
            "insets 8 14 8 12, fillx, novisualpadding, hidemode 3", "[]10[]push[grow 0]12[]12[]"));
    this.moment = moment;
    setBackground(Theme.HEADER);
    state.setName("state");
    state.setOpaque(true);
    state.setBorder(BorderFactory.createEmptyBorder(7, 14, 7, 14));
    runs.setName("runs");
    runs.setRenderer(new RunRenderer());
    runs.addActionListener(
        event -> {
          if (!filling && runs.getSelectedItem() instanceof RunRow row) {
            choose.accept(row.run());
          }
        });
    JButton safety = new JButton("Safety");
    safety.setName("safety");
    safety.addActionListener(event -> cautions.run());
    add(site, "wmin 60");
    add(heater, "wmin 0");
    add(runs, "wmin 120, wmax 460");
    add(state);
    add(safety);
    showNoRun();
  }

  /** Hides what speaks of a run; whatever is shown later is seen again. */
  void showNoRun() {
    runs.setVisible(false);
    state.setVisible(false);
  }

  void showRuns(List<RunRow> rows, long shown) {
    filling = true;
    if (!rows.equals(shownRows())) {
      runs.removeAllItems();
      rows.forEach(runs::addItem);
    }
    rows.stream().filter(row -> row.run() == shown).findFirst().ifPresent(runs::setSelectedItem);
    runs.setVisible(!rows.isEmpty());
    filling = false;
  }

  void showRun(Recording recording, Liveness liveness) {
    site.setText(recording.rig().site().name());
    heater.setText(recording.rig().heater().label());
    if (!liveness.isRecording()) {
      say("ended " + moment.shortDayAndTime(recording.endMs()), OVER);
    } else if (liveness.isSilent()) {
      say(
          "no readings for " + Moment.duration(liveness.sinceGrowthMs().orElse(0)),
          Theme.of(Tone.ALARM));
    } else {
      say("recording for " + Moment.duration(recording.endMs() - recording.startMs()), LIVE);
    }
  }

  void showTrouble(String why) {
    say(why, Theme.of(Tone.ALARM));
  }

  private void say(String text, Color ground) {
    state.setVisible(true);
    state.setText(text);
    state.setBackground(ground);
  }

  private List<RunRow> shownRows() {
    return java.util.stream.IntStream.range(0, runs.getItemCount())
        .mapToObj(runs::getItemAt)
        .toList();
  }

  private static final class RunRenderer extends DefaultListCellRenderer {
    @Override
    public Component getListCellRendererComponent(
        JList<?> list, Object value, int index, boolean selected, boolean focused) {
      Text.plainText(this);
      return super.getListCellRendererComponent(list, value, index, selected, focused);
    }
  }
}
