package heatwake.dashboard.window;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.collector.store.Store;
import heatwake.dashboard.chart.StripStack;
import heatwake.dashboard.chart.TimeRange;
import heatwake.dashboard.example.InventedNight;
import heatwake.dashboard.example.InventedStore;
import heatwake.dashboard.present.UnitChoice;
import java.awt.Component;
import java.awt.Container;
import java.awt.event.KeyEvent;
import java.nio.file.Path;
import java.util.Optional;
import javax.swing.JLabel;
import org.assertj.swing.core.BasicRobot;
import org.assertj.swing.core.Robot;
import org.assertj.swing.fixture.FrameFixture;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Real clicks and keys on a real window over a real store. */
class DashboardWindowTest {
  @TempDir Path folder;
  private Path file;
  private Dashboard dashboard;
  private FrameFixture window;
  private Robot robot;

  @BeforeAll
  static void needsADisplay() {
    OnScreen.require();
  }

  @BeforeEach
  void chooseFile() {
    file = folder.resolve("window.db");
  }

  @AfterEach
  void close() throws InterruptedException {
    if (window != null) {
      window.close();
      dashboard.awaitClosed();
      robot.cleanUpWithoutDisposingWindows();
    }
  }

  private void open() throws InterruptedException {
    dashboard = Dashboard.open(file, UnitChoice.METRIC);
    robot = BasicRobot.robotWithCurrentAwtHierarchy();
    window = new FrameFixture(robot, dashboard.frame());
    window.focus();
  }

  @Test
  void aNoteTypedIsStoredInTheRun() throws InterruptedException {
    long run;
    try (Store store = Store.open(file)) {
      run = InventedStore.begin(store, 20);
    }
    open();
    OnScreen.waitUntil("a note can be typed", () -> window.textBox("note").target().isEnabled());
    window.textBox("note").enterText("bypass moved, <html> too");
    window.button("add-note").click();
    OnScreen.waitUntil("the window says so", () -> "note stored".equals(labelled("note-answer")));
    try (Store store = Store.openExisting(file)) {
      assertThat(store.load(run).notes())
          .last()
          .satisfies(
              note -> {
                assertThat(note.text()).isEqualTo("bypass moved, <html> too");
                assertThat(note.timeMs()).isGreaterThanOrEqualTo(InventedNight.minute(19.9));
              });
    }
    window.textBox("note").requireText("");
  }

  @Test
  void aRunBeingRecordedGrowsOnTheScreenAndItsEndIsSaid() throws InterruptedException {
    try (Store store = Store.open(file)) {
      long run = InventedStore.begin(store, 20);
      open();
      OnScreen.waitUntil(
          "it is recording", () -> labelled("state").startsWith("recording for 19 min"));
      InventedStore.append(store, run, 20, 40);
      OnScreen.waitUntil("it grew", () -> labelled("state").startsWith("recording for 39 min"));
      OnScreen.waitUntil(
          "the charts grew",
          () -> range().isPresent() && range().get().toMs() > InventedNight.minute(39.5));
      assertThat(askedFor()).contains("with the time now");
      store.endRun(run, InventedNight.minute(40));
      OnScreen.waitUntil("it is over", () -> labelled("state").startsWith("ended"));
      assertThat(askedFor()).contains("stands at its end");
    }
  }

  /** What the empty line for notes asks for. */
  private String askedFor() {
    return (String) window.textBox("note").target().getClientProperty("JTextField.placeholderText");
  }

  @Test
  void aPastRunCanBeOpened() throws InterruptedException {
    try (Store store = Store.open(file)) {
      store.endRun(InventedStore.begin(store, 60), InventedNight.minute(60));
      store.endRun(InventedStore.begin(store, 30), InventedNight.minute(30));
    }
    open();
    OnScreen.waitUntil(
        "the newest run is shown",
        () -> range().isPresent() && range().get().toMs() < InventedNight.minute(31));
    window.comboBox("runs").selectItem(0);
    OnScreen.waitUntil(
        "the older, longer one is shown",
        () -> range().orElseThrow().toMs() > InventedNight.minute(59));
  }

  @Test
  void aStoreWithoutRunsSaysHowToStartOne() throws InterruptedException {
    Store.open(file).close();
    open();
    OnScreen.waitUntil(
        "the mend is said",
        () -> labelled("empty").contains("heatwake record RIG.toml --db " + file));
    assertThat(window.textBox("note").target().isEnabled()).isFalse();
    assertThat(find("runs")).isEmpty();
    assertThat(find("state")).isEmpty();
  }

  /** A card layout begins with the card added first. */
  @Test
  void beforeTheStoreWasReadItSaysThatItIsRead() throws InterruptedException {
    Store.open(file).close();
    open();
    Component reading = robot.finder().findByName(window.target(), "reading", false);
    assertThat(((JLabel) reading).getText()).contains("Reading " + file);
    Container cards = reading.getParent().getParent();
    assertThat(cards.getComponent(0)).isSameAs(reading.getParent());
  }

  @Test
  void safetyIsOneClickAway() throws InterruptedException {
    try (Store store = Store.open(file)) {
      InventedStore.begin(store, 5);
    }
    open();
    window.button("safety").click();
    OnScreen.waitUntil("the cautions are shown", () -> find("cautions").isPresent());
    window.dialog("cautions").pressAndReleaseKeys(KeyEvent.VK_ESCAPE);
    OnScreen.waitUntil("Escape closes them", () -> find("cautions").isEmpty());
  }

  private Optional<TimeRange> range() {
    return find("charts")
        .map(ChartPane.class::cast)
        .flatMap(ChartPane::onScreen)
        .map(StripStack::range);
  }

  private String labelled(String name) {
    return find(name).map(label -> ((JLabel) label).getText()).orElse("");
  }

  private Optional<Component> find(String name) {
    return robot.finder().findAll(one -> name.equals(one.getName()) && one.isShowing()).stream()
        .findFirst();
  }
}
