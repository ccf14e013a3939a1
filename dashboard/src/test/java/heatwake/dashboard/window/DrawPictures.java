package heatwake.dashboard.window;

import static heatwake.dashboard.window.OnScreen.waitUntil;

import heatwake.analysis.series.Recording;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import heatwake.dashboard.demo.DemoFolder;
import heatwake.dashboard.demo.DemoRun;
import heatwake.dashboard.demo.Scenarios;
import heatwake.dashboard.example.InventedStore;
import heatwake.dashboard.present.UnitChoice;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import javax.imageio.ImageIO;
import javax.swing.JTabbedPane;
import javax.swing.SwingUtilities;
import org.assertj.swing.core.BasicRobot;
import org.assertj.swing.core.Robot;
import org.assertj.swing.fixture.FrameFixture;

/**
 * Draws the pictures of the window for the pages of documentation, from the demo's simulated site;
 * {@code docs/window.md} says how it is run. Give the folder for the pictures.
 */
final class DrawPictures {
  private static final long EVENING_MS = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();
  private static final long MINUTE_MS = 60_000;
  private static final int WIDTH = 1440;
  private static final int HEIGHT = 980;

  private final Path work;
  private final Path pictures;

  private DrawPictures(Path work, Path pictures) {
    this.work = work;
    this.pictures = pictures;
  }

  public static void main(String[] arguments) throws IOException, InterruptedException {
    DrawPictures drawing =
        new DrawPictures(Files.createTempDirectory("heatwake-pictures"), Path.of(arguments[0]));
    drawing.night();
    drawing.startUp();
    System.exit(0);
  }

  /** In the morning after a night in which the strainer clogged, with its flag touched. */
  private void night() throws IOException, InterruptedException {
    DemoFolder folder = new DemoFolder(work.resolve("night"));
    DemoRun run = DemoRun.record(Scenarios.of(Scenarios.USUAL), folder, EVENING_MS, share -> {});
    try (Store store = Store.openExisting(folder.database())) {
      store.addNote(run.run(), EVENING_MS + 150 * MINUTE_MS, "cover off, left the logger running");
      store.addNote(run.run(), EVENING_MS + 705 * MINUTE_MS, "cleared leaves from the strainer");
    }
    try (Screen screen = new Screen(folder.database())) {
      screen.robot.click(screen.robot.finder().findByName("flag-low-heater-flow"));
      screen.settle();
      screen.window.toggleButton("view-All").click();
      screen.capture("window-night.png");
    }
  }

  /** Fifty minutes into a start-up that is still being recorded. */
  private void startUp() throws IOException, InterruptedException {
    DemoFolder folder = new DemoFolder(work.resolve("start-up"));
    DemoRun run = DemoRun.record(Scenarios.of("start-up"), folder, EVENING_MS, share -> {});
    Path soFar = work.resolve("so-far.db");
    try (Store whole = Store.openExisting(folder.database());
        Store store = Store.open(soFar)) {
      Recording recording = whole.load(run.run());
      long begun =
          store.beginRun(RigReader.parse(whole.rigText(run.run()), "rig.toml"), EVENING_MS);
      InventedStore.append(store, begun, recording, EVENING_MS, EVENING_MS + 50 * MINUTE_MS);
      store.addNote(begun, EVENING_MS + 8 * MINUTE_MS, "pump on, bypass half open");
    }
    try (Screen screen = new Screen(soFar)) {
      screen.window.tabbedPane("tabs").selectTab("Start-up");
      screen.capture("window-startup.png");
      screen.window.tabbedPane("tabs").selectTab("Bypass");
      screen.capture("window-bypass.png");
    }
  }

  /** A window of the pictures' size. */
  private final class Screen implements AutoCloseable {
    private final Dashboard dashboard;
    private final Robot robot;
    private final FrameFixture window;

    Screen(Path database) throws InterruptedException {
      dashboard = Dashboard.open(database, UnitChoice.METRIC);
      robot = BasicRobot.robotWithCurrentAwtHierarchy();
      window = new FrameFixture(robot, dashboard.frame());
      SwingUtilities.invokeLater(() -> dashboard.frame().setSize(WIDTH, HEIGHT));
      waitUntil(
          "the charts are painted",
          () ->
              robot.finder().findAll(ChartPane.class::isInstance).stream()
                  .map(ChartPane.class::cast)
                  .anyMatch(charts -> charts.isShowing() && charts.onScreen().isPresent()));
      settle();
    }

    /** Long enough for another picture of the charts to be painted. */
    void settle() throws InterruptedException {
      robot.waitForIdle();
      Thread.sleep(2500);
    }

    void capture(String name) throws IOException, InterruptedException {
      robot.moveMouse(robot.finder().findByType(JTabbedPane.class));
      settle();
      BufferedImage picture = new BufferedImage(WIDTH, HEIGHT, BufferedImage.TYPE_INT_RGB);
      try {
        SwingUtilities.invokeAndWait(
            () -> {
              Graphics2D g = picture.createGraphics();
              dashboard.frame().getRootPane().paint(g);
              g.dispose();
            });
      } catch (java.lang.reflect.InvocationTargetException e) {
        throw new IllegalStateException(e);
      }
      Files.createDirectories(pictures);
      ImageIO.write(picture, "png", pictures.resolve(name).toFile());
    }

    @Override
    public void close() {
      window.close();
      robot.cleanUpWithoutDisposingWindows();
    }
  }
}
