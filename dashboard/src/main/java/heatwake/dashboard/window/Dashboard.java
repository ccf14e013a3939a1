package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.RunRow;
import heatwake.dashboard.present.UnitChoice;
import java.awt.BorderLayout;
import java.awt.CardLayout;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.GraphicsEnvironment;
import java.awt.Rectangle;
import java.awt.event.WindowAdapter;
import java.awt.event.WindowEvent;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.concurrent.CountDownLatch;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import javax.swing.WindowConstants;
import net.miginfocom.swing.MigLayout;

/**
 * The window on a store: live while a recorder writes it, and on any past run. Needs a display; see
 * {@link Display}.
 */
public final class Dashboard {
  private static final Dimension USUAL = new Dimension(1600, 1000);
  private static final Dimension LEAST = new Dimension(800, 560);
  private static final String RUN = "run";
  private static final String EMPTY = "empty";
  private static final String READING = "reading";

  private final JFrame frame = new JFrame("Heatwake");
  private final CountDownLatch closed = new CountDownLatch(1);
  private final CardLayout cards = new CardLayout();
  private final JPanel content = new JPanel(cards);
  private final Moment moment = new Moment(ZoneId.systemDefault());
  private final RunScreen screen;
  private final RunWatcher watcher;
  private final Header header;
  private final NoteBar notes;

  private Dashboard(Path file, UnitChoice units) {
    screen = new RunScreen(units, moment);
    watcher = new RunWatcher(file, units, moment, new FromWatcher());
    header = new Header(moment, watcher::choose, this::showCautions);
    notes = new NoteBar(watcher::addNote);
    notes.setEnabled(false);
    // Nothing is said of the runs before they were looked for.
    content.add(sentence(READING, "Reading " + file + " ..."), READING);
    content.add(
        sentence(EMPTY, "No run yet. Start one with: heatwake record RIG.toml --db " + file),
        EMPTY);
    content.add(screen, RUN);
    frame.setName("heatwake");
    frame.add(header, BorderLayout.NORTH);
    frame.add(content, BorderLayout.CENTER);
    frame.add(notes, BorderLayout.SOUTH);
    frame.getContentPane().setBackground(Theme.GROUND);
    frame.setDefaultCloseOperation(WindowConstants.DISPOSE_ON_CLOSE);
    frame.addWindowListener(
        new WindowAdapter() {
          @Override
          public void windowClosed(WindowEvent event) {
            watcher.close();
            closed.countDown();
          }
        });
    Rectangle room = GraphicsEnvironment.getLocalGraphicsEnvironment().getMaximumWindowBounds();
    frame.setMinimumSize(
        new Dimension(Math.min(LEAST.width, room.width), Math.min(LEAST.height, room.height)));
    frame.setSize(Math.min(USUAL.width, room.width), Math.min(USUAL.height, room.height));
    frame.setLocation(
        room.x + (room.width - frame.getWidth()) / 2,
        room.y + (room.height - frame.getHeight()) / 2);
  }

  /**
   * Opens the window on a store, on its run being recorded or else its newest.
   *
   * @param file a store that exists
   * @param units what the person reads in
   */
  public static Dashboard open(Path file, UnitChoice units) throws InterruptedException {
    Dashboard[] made = new Dashboard[1];
    try {
      SwingUtilities.invokeAndWait(
          () -> {
            Theme.install();
            made[0] = new Dashboard(file, units);
            made[0].frame.setVisible(true);
            made[0].watcher.start();
          });
    } catch (java.lang.reflect.InvocationTargetException e) {
      throw new IllegalStateException("the window could not be opened", e.getCause());
    }
    return made[0];
  }

  /** Returns when the person has closed the window. */
  public void awaitClosed() throws InterruptedException {
    closed.await();
  }

  JFrame frame() {
    return frame;
  }

  private void showCautions() {
    CautionsDialog.over(frame).setVisible(true);
  }

  private static JPanel sentence(String name, String text) {
    JPanel panel = new JPanel(new MigLayout("fill, insets 40", "[center]", "[center]"));
    JLabel said = Text.line(text, 17f, Font.PLAIN, Palette.FAINT_INK);
    said.setName(name);
    panel.add(said, "wmin 0");
    return panel;
  }

  private void show(Snapshot snapshot) {
    snapshot
        .shown()
        .ifPresentOrElse(
            shown -> {
              header.showRuns(
                  snapshot.runs().stream().map(run -> RunRow.of(run, moment)).toList(),
                  shown.heading().id());
              header.showRun(shown.recording(), shown.liveness());
              screen.show(shown);
              notes.setEnabled(true);
              if (shown.liveness().isRecording()) {
                notes.asksForRunGoingOn();
              } else {
                notes.asksForRunOver();
              }
              if (!screen.isVisible()) {
                cards.show(content, RUN);
                screen.atRest().requestFocusInWindow();
              }
            },
            () -> {
              notes.setEnabled(false);
              header.showNoRun();
              cards.show(content, EMPTY);
            });
  }

  private final class FromWatcher implements RunWatcher.Listener {
    @Override
    public void saw(Snapshot snapshot) {
      SwingUtilities.invokeLater(() -> show(snapshot));
    }

    @Override
    public void failed(String why) {
      SwingUtilities.invokeLater(() -> header.showTrouble(why));
    }
  }
}
