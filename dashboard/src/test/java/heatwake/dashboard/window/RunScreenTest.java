package heatwake.dashboard.window;

import static heatwake.dashboard.window.OnScreen.waitUntil;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.store.RunHeading;
import heatwake.dashboard.chart.RunCharts;
import heatwake.dashboard.chart.StripStack;
import heatwake.dashboard.chart.TimeRange;
import heatwake.dashboard.example.InventedNight;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.UnitChoice;
import heatwake.dashboard.present.Unparted;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.Point;
import java.awt.event.KeyEvent;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import javax.swing.JFrame;
import javax.swing.JLabel;
import javax.swing.JTabbedPane;
import javax.swing.JTextArea;
import org.assertj.swing.core.BasicRobot;
import org.assertj.swing.core.MouseButton;
import org.assertj.swing.core.Robot;
import org.assertj.swing.edt.GuiActionRunner;
import org.assertj.swing.fixture.FrameFixture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Real clicks on the screen of one run, with findings written by hand. */
class RunScreenTest {
  /** The charts take more than this of a window 1300 wide. */
  private static final int LEAST_WIDTH = 400;

  private static final long HOUR_MS = 3_600_000;

  private Robot robot;
  private FrameFixture window;

  @BeforeAll
  static void needsADisplay() {
    OnScreen.require();
  }

  @BeforeEach
  void open() {
    robot = BasicRobot.robotWithCurrentAwtHierarchy();
    JFrame frame =
        GuiActionRunner.execute(
            () -> {
              Theme.install();
              Moment moment = new Moment(ZoneOffset.UTC);
              RunScreen screen = new RunScreen(UnitChoice.METRIC, moment);
              JFrame made = new JFrame("test");
              made.add(screen);
              made.setSize(1300, 850);
              screen.show(night(moment));
              // Not shown by the fixture: it packs the window, thousands of pixels tall, and moves
              // it, and where nothing manages windows its place may then be told wrongly, so that
              // clicks fall beside what they are meant for.
              made.setVisible(true);
              return made;
            });
    window = new FrameFixture(robot, frame);
    window.focus();
    waitUntil("the whole run is on the screen", () -> range().isPresent());
    // The first picture may be of a window that has not its size yet.
    waitUntil("the charts have their width", this::isLaidOut);
    robot.waitForIdle();
  }

  private boolean isLaidOut() {
    return charts().getWidth() > LEAST_WIDTH
        && place(InventedNight.minute(0), 0).x + LEAST_WIDTH / 2
            < place(InventedNight.minute(720), 0).x;
  }

  @AfterEach
  void close() {
    if (window != null) {
      window.cleanUp();
    }
  }

  private static Snapshot.Shown night(Moment moment) {
    var recording = InventedNight.recording();
    var findings = InventedNight.findings();
    return new Snapshot.Shown(
        new RunHeading(1, "Heron Lane", recording.startMs(), OptionalLong.of(recording.endMs())),
        recording,
        findings,
        RunCharts.of(recording, findings, UnitChoice.METRIC, moment),
        new Liveness(recording.endMs(), OptionalLong.empty()));
  }

  @Test
  void aFlagTouchedInTheListOpensAndTheChartsJumpToItsTime() {
    robot.click(named("flag-short-cycling"));
    waitUntil("the charts jumped", () -> range().orElseThrow().lengthMs() < 4 * HOUR_MS);
    TimeRange seen = range().orElseThrow();
    assertThat(seen.contains(InventedNight.minute(410))).isTrue();
    assertThat(seen.contains(InventedNight.minute(470))).isTrue();
    assertThat(charts().shadedSpan())
        .hasValue(new TimeRange(InventedNight.minute(410), InventedNight.minute(470)));
    assertThat(isRead("Watch the flow switch while the pump runs")).isTrue();

    window.toggleButton("view-All").click();
    waitUntil("all is seen again", () -> range().orElseThrow().lengthMs() > 11 * HOUR_MS);
  }

  @Test
  void aFlagIsOpenedFromTheKeyboardAndKeepsIt() {
    focus("flag-short-cycling");
    robot.pressAndReleaseKeys(KeyEvent.VK_ENTER);
    waitUntil("the charts jumped", () -> range().orElseThrow().lengthMs() < 4 * HOUR_MS);
    assertThat(isRead("Watch the flow switch while the pump runs")).isTrue();
    waitUntil("the card keeps the keyboard", () -> named("flag-short-cycling").isFocusOwner());
  }

  @Test
  void theChartsAreLedFromTheKeyboard() {
    long whole = range().orElseThrow().lengthMs();
    focus("charts");
    robot.pressAndReleaseKeys(KeyEvent.VK_EQUALS);
    waitUntil("it is looked at closer", () -> range().orElseThrow().lengthMs() < whole);
    TimeRange closer = range().orElseThrow();
    robot.pressAndReleaseKeys(KeyEvent.VK_LEFT);
    waitUntil("it went back", () -> range().orElseThrow().fromMs() < closer.fromMs());
    robot.pressAndReleaseKeys(KeyEvent.VK_RIGHT);
    waitUntil("it went on", () -> range().orElseThrow().fromMs() > closer.fromMs() - 1000);
    robot.pressAndReleaseKeys(KeyEvent.VK_HOME);
    waitUntil("all is seen again", () -> range().orElseThrow().lengthMs() == whole);
  }

  @Test
  void nothingIsCutOffInANarrowWindow() {
    window.resizeTo(new Dimension(820, 600));
    for (String tab : List.of("Findings", "Start-up", "Bypass", "Figures")) {
      openTab(tab);
      assertThat(
              robot
                  .finder()
                  .findAll(
                      window.tabbedPane("tabs").target(),
                      one ->
                          one instanceof JLabel label
                              && label.isShowing()
                              && label.getWidth() < label.getPreferredSize().width))
          .as(tab)
          .extracting(one -> ((JLabel) one).getText())
          .isEmpty();
    }
  }

  private void focus(String name) {
    GuiActionRunner.execute(() -> named(name).requestFocusInWindow());
    waitUntil("it has the keyboard", () -> named(name).isFocusOwner());
  }

  @Test
  void aFlagTouchedInTheChartsOpensInTheList() {
    assertThat(isRead("Open the bypass towards the heater or check the strainer.")).isFalse();
    robot.click(charts(), place(InventedNight.minute(26), 30));
    waitUntil(
        "the flag is open",
        () -> isRead("Open the bypass towards the heater or check the strainer."));
    waitUntil("the charts jumped", () -> range().orElseThrow().lengthMs() < HOUR_MS);
  }

  @Test
  void aSpanDrawnIsLookedAtCloser() {
    Point from = place(InventedNight.minute(120), 300);
    Point to = place(InventedNight.minute(240), 300);
    robot.moveMouse(charts(), from);
    robot.waitForIdle();
    robot.pressMouse(MouseButton.LEFT_BUTTON);
    robot.moveMouse(charts(), new Point((from.x + to.x) / 2, 300));
    robot.moveMouse(charts(), to);
    robot.releaseMouse(MouseButton.LEFT_BUTTON);
    waitUntil("the span fills the charts", () -> range().orElseThrow().lengthMs() < 3 * HOUR_MS);
    TimeRange seen = range().orElseThrow();
    assertThat(Math.abs(seen.fromMs() - InventedNight.minute(120))).isLessThan(180_000);
    assertThat(Math.abs(seen.toMs() - InventedNight.minute(240))).isLessThan(180_000);
  }

  @Test
  void aCycleTouchedIsShownInTheCharts() {
    openTab("Cycles");
    window.list("cycles").clickItem(0);
    waitUntil(
        "it is shaded",
        () ->
            charts()
                .shadedSpan()
                .equals(
                    Optional.of(
                        new TimeRange(InventedNight.minute(21), InventedNight.minute(380)))));
    assertThat(isRead("1 cycle; the compressor ran 5 h 59 min.")).isTrue();
  }

  @Test
  void theLatestHourIsOneClickAway() {
    window.toggleButton("view-1 h").click();
    waitUntil("an hour is seen", () -> range().orElseThrow().lengthMs() == HOUR_MS);
    assertThat(range().orElseThrow().toMs()).isEqualTo(InventedNight.minute(720));
  }

  @Test
  void theListsReadWhatTheFindingsSay() {
    assertThat(isRead("Control: thermostat, switches or settings")).isTrue();
    assertThat(isRead("pool heat balance: no water-pool probe")).isTrue();
    openTab("Start-up");
    assertThat(isRead("62 L/min through the heater; the nameplate asks for 90 to 200 L/min"))
        .isTrue();
    openTab("Bypass");
    assertThat(isRead("At today's expected heat, 1.14 to 2.54 K means nameplate flow.")).isTrue();
    openTab("Log");
    assertThat(isRead("owner's dog <b>asleep</b> on the lid")).isTrue();
  }

  private void openTab(String title) {
    window.tabbedPane("tabs").selectTab(title);
    waitUntil("the tab is open", () -> title.equals(tabOpen()));
  }

  private String tabOpen() {
    JTabbedPane tabs = (JTabbedPane) named("tabs");
    return tabs.getTitleAt(tabs.getSelectedIndex());
  }

  private Point place(long ms, int y) {
    StripStack stack = charts().onScreen().orElseThrow();
    int width = charts().getWidth();
    int x = 0;
    while (x < width && stack.timeAt(width, x) < ms) {
      x++;
    }
    return new Point(x, y);
  }

  private boolean isRead(String beginning) {
    return robot
        .finder()
        .findAll(
            one ->
                one instanceof JTextArea area
                    && area.isShowing()
                    && Unparted.plain(area.getText()).startsWith(beginning))
        .stream()
        .findFirst()
        .isPresent();
  }

  private ChartPane charts() {
    return (ChartPane) named("charts");
  }

  private Component named(String name) {
    return robot.finder().findByName(window.target(), name);
  }

  private Optional<TimeRange> range() {
    return charts().onScreen().map(StripStack::range);
  }
}
