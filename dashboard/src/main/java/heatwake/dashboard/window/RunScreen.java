package heatwake.dashboard.window;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.series.Recording;
import heatwake.dashboard.chart.ChartStyle;
import heatwake.dashboard.chart.RunCharts;
import heatwake.dashboard.chart.Strip;
import heatwake.dashboard.chart.TimeRange;
import heatwake.dashboard.chart.View;
import heatwake.dashboard.present.BypassAdvice;
import heatwake.dashboard.present.CycleRow;
import heatwake.dashboard.present.EndedTiles;
import heatwake.dashboard.present.FigureRow;
import heatwake.dashboard.present.FigureRows;
import heatwake.dashboard.present.FlagRow;
import heatwake.dashboard.present.LiveTiles;
import heatwake.dashboard.present.LogRow;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.ReadingRow;
import heatwake.dashboard.present.StartupRow;
import heatwake.dashboard.present.UnitChoice;
import heatwake.dashboard.present.VerdictWords;
import java.awt.CardLayout;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JTabbedPane;
import net.miginfocom.swing.MigLayout;

/** One run on the screen: figures on top, charts, what was found beside them. */
final class RunScreen extends JPanel {
  private static final String CHARTS = "charts";
  private static final String WALL = "wall";

  private final transient UnitChoice units;
  private final transient Moment moment;
  private final TileRow tiles = new TileRow();
  private final ChartBar bar = new ChartBar(new BarActions());
  private final ChartPane charts = new ChartPane(new PaneActions());
  private final transient ValuesWall wall = new ValuesWall();
  private final CardLayout middleCards = new CardLayout();
  private final JPanel middle = new JPanel(middleCards);
  private final JTabbedPane tabs = new JTabbedPane(JTabbedPane.TOP, JTabbedPane.SCROLL_TAB_LAYOUT);
  private final transient FindingsPanel findingsPanel = new FindingsPanel(this::jumpTo);
  private final transient StartupPanel startup = new StartupPanel();
  private final transient BypassPanel bypass = new BypassPanel();
  private final transient FiguresPanel figures = new FiguresPanel();
  private final transient CyclesPanel cycles;
  private final transient LogPanel log = new LogPanel();

  private transient Snapshot.Shown shown;
  private transient View view = new View.Whole();
  private transient Optional<TimeRange> shaded = Optional.empty();
  private Set<Strip> chosenStrips = Set.of();

  RunScreen(UnitChoice units, Moment moment) {
    super(
        new MigLayout(
            "fill, insets 10, gap 10 8, novisualpadding",
            "[grow,fill][330:29%:430,fill]",
            "[]8[][grow,fill]"));
    this.units = units;
    this.moment = moment;
    cycles = new CyclesPanel(CycleRow.energyUnit(units), this::jumpTo);
    setBackground(Theme.GROUND);
    middle.setBorder(BorderFactory.createLineBorder(Theme.EDGE));
    middle.add(charts, CHARTS);
    middle.add(wall.pane(), WALL);
    tabs.setName("tabs");
    tabs.addTab("Findings", findingsPanel.pane());
    tabs.addTab("Start-up", startup.pane());
    tabs.addTab("Bypass", bypass.pane());
    tabs.addTab("Figures", figures.pane());
    tabs.addTab("Cycles", cycles.pane());
    tabs.addTab("Log", log.pane());
    tabs.setBorder(BorderFactory.createLineBorder(Theme.EDGE));
    add(tiles, "span 2, growx, h " + TileRow.HEIGHT + "!, wrap");
    add(bar, "growx");
    add(tabs, "spany 2, grow, wrap");
    add(middle, "grow, wmin 200, hmin 120");
    charts.addComponentListener(
        new ComponentAdapter() {
          @Override
          public void componentResized(ComponentEvent event) {
            showCharts();
          }
        });
  }

  /** Where the keyboard goes when nothing is being typed. */
  JComponent atRest() {
    return charts;
  }

  /** Shows a run as it is now. */
  void show(Snapshot.Shown next) {
    boolean other = shown == null || shown.heading().id() != next.heading().id();
    shown = next;
    if (other) {
      view = new View.Whole();
      shaded = Optional.empty();
      cycles.clearSelection();
    }
    Recording recording = next.recording();
    Findings findings = next.findings();
    Liveness liveness = next.liveness();
    tiles.show(
        liveness.isRecording()
            ? LiveTiles.of(recording, findings, liveness.nowMs(), units)
            : EndedTiles.of(findings, units));
    wall.show(
        liveness.isRecording()
            ? ReadingRow.of(recording, liveness.nowMs(), units)
            : ReadingRow.atEnd(recording, units));
    findingsPanel.show(
        VerdictWords.of(findings.verdict()), FlagRow.of(findings, moment), findings.missing());
    startup.show(StartupRow.of(findings, moment));
    bypass.show(BypassAdvice.of(findings, liveness.nowMs(), units));
    figures.show(tables(findings));
    cycles.show(CycleRow.of(findings, units, moment));
    log.show(LogRow.of(recording, moment));
    showCharts();
  }

  private Map<String, List<FigureRow>> tables(Findings findings) {
    Map<String, List<FigureRow>> tables = new LinkedHashMap<>();
    tables.put("The run", FigureRows.ofRun(findings, units, moment));
    for (SteadySpan span : findings.steady()) {
      tables.put(
          "Steady " + moment.span(span.startMs(), span.endMs()),
          FigureRows.ofSteady(span, findings, units));
    }
    return tables;
  }

  private void showCharts() {
    if (shown == null) {
      return;
    }
    RunCharts all = shown.charts();
    List<Strip> strips =
        chosenStrips.isEmpty()
            ? all.thatFit(charts.getHeight(), ChartStyle.SCREEN)
            : all.strips().stream().filter(chosenStrips::contains).toList();
    TimeRange range = view.of(all.whole());
    charts.show(all.stack(strips, range, ChartStyle.SCREEN), shaded);
    bar.showView(view);
    bar.showStrips(all, strips);
  }

  private void jumpTo(Flag flag) {
    cycles.clearSelection();
    jumpTo(TimeRange.between(flag.startMs(), flag.endMs()));
  }

  private void jumpTo(TimeRange span) {
    shaded = Optional.of(span);
    look(View.around(span.fromMs(), span.toMs(), shown.charts().whole()));
  }

  private void look(View next) {
    view = next;
    showCharts();
  }

  private final class PaneActions implements ChartPane.Listener {
    @Override
    public void selected(TimeRange range) {
      look(View.fixed(range, shown.charts().whole()));
    }

    @Override
    public void zoomed(long ms, double factor) {
      TimeRange whole = shown.charts().whole();
      look(View.fixed(view.of(whole).scaledAround(ms, factor), whole));
    }

    @Override
    public void touched(Flag flag) {
      tabs.setSelectedIndex(0);
      findingsPanel.open(flag);
      jumpTo(flag);
    }

    @Override
    public void wholeWanted() {
      look(new View.Whole());
    }
  }

  private final class BarActions implements ChartBar.Listener {
    @Override
    public void viewChosen(View chosen) {
      look(chosen);
    }

    @Override
    public void stripsChosen(Set<Strip> strips) {
      chosenStrips = strips;
      showCharts();
    }

    @Override
    public void wallChosen(boolean readingsInPlaceOfCharts) {
      middleCards.show(middle, readingsInPlaceOfCharts ? WALL : CHARTS);
    }
  }
}
