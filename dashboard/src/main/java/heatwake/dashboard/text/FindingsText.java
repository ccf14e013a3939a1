package heatwake.dashboard.text;

import heatwake.analysis.finding.ChannelCoverage;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Note;
import heatwake.analysis.series.Recording;
import heatwake.dashboard.present.BypassAdvice;
import heatwake.dashboard.present.Cautions;
import heatwake.dashboard.present.CycleRow;
import heatwake.dashboard.present.Figure;
import heatwake.dashboard.present.FigureRow;
import heatwake.dashboard.present.FigureRows;
import heatwake.dashboard.present.FlagRow;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.Names;
import heatwake.dashboard.present.ReadingPace;
import heatwake.dashboard.present.StartupRow;
import heatwake.dashboard.present.SteadyLine;
import heatwake.dashboard.present.UnitChoice;
import heatwake.dashboard.present.VerdictWords;
import java.io.PrintWriter;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Writes the findings of a run for a person at a terminal, the verdict on top. */
public final class FindingsText {
  private static final int MOST_SPANS = 20;

  /** A troubled night has sixty; more only scroll away. */
  private static final int MOST_CYCLES = 60;

  private static final int NAME_WIDTH = 36;

  private final Recording recording;
  private final Findings findings;
  private final UnitChoice units;
  private final Moment moment;

  /** Takes a run and what was found in it. */
  public FindingsText(Recording recording, Findings findings, UnitChoice units, Moment moment) {
    this.recording = recording;
    this.findings = units.worded(findings);
    this.units = units;
    this.moment = moment;
  }

  /** Writes everything, and flushes. */
  public void writeTo(PrintWriter out) {
    Layout layout = new Layout(out);
    head(layout);
    verdict(layout);
    flags(layout);
    figures(layout);
    bypass(layout);
    steady(layout);
    cycles(layout);
    startup(layout);
    phases(layout);
    channels(layout);
    notes(layout);
    missing(layout);
    layout.blank();
    layout.paragraph("", "Before you touch anything: " + Cautions.all().get(0));
    out.flush();
  }

  /** Writes what a person wants to know first: verdict, flags, figures of the run. Flushes. */
  public void writeGistTo(PrintWriter out) {
    Layout layout = new Layout(out);
    head(layout);
    verdict(layout);
    flags(layout);
    figures(layout);
    layout.blank();
    layout.paragraph("", "Before you touch anything: " + Cautions.all().get(0));
    out.flush();
  }

  private void head(Layout layout) {
    layout.line(
        "Run "
            + findings.run()
            + ", "
            + recording.rig().site().name()
            + ": "
            + moment.spanWithYear(findings.startMs(), findings.endMs())
            + " ("
            + Moment.duration(findings.endMs() - findings.startMs())
            + ")");
    layout.line(
        "Times in "
            + moment.zoneAt(findings.startMs())
            + "; ± holds in about 95 of 100 cases (expanded uncertainty, k = 2)");
  }

  private void verdict(Layout layout) {
    VerdictWords words = VerdictWords.of(findings.verdict());
    layout.heading("Verdict");
    layout.line(
        words.headline() + (words.sureness().isEmpty() ? "" : " (" + words.sureness() + ")"));
    words.because().forEach(reason -> layout.paragraph("  - ", reason));
    words.wouldDecide().forEach(advice -> layout.paragraph("  To be surer: ", advice));
  }

  private void flags(Layout layout) {
    List<FlagRow> rows = FlagRow.of(findings, moment);
    layout.heading(rows.isEmpty() ? "Flags: none" : "Flags");
    for (FlagRow row : rows) {
      layout.line(
          Names.of(row.severity())
              + ": "
              + row.title()
              + " ("
              + row.flag().rule()
              + "), "
              + row.when());
      layout.paragraph("  ", row.evidence());
      row.consequences().forEach(one -> layout.paragraph("  ", one));
      if (!row.causes().isEmpty()) {
        layout.paragraph("  ", row.causes());
      }
      layout.paragraph("  Next check: ", row.flag().nextCheck());
    }
  }

  private void figures(Layout layout) {
    List<FigureRow> rows = FigureRows.ofRun(findings, units, moment);
    if (!rows.isEmpty()) {
      layout.heading("Figures of the run");
      rows.forEach(row -> figure(layout, row));
    }
  }

  private static void figure(Layout layout, FigureRow row) {
    layout.columns(NAME_WIDTH, row.name(), row.value(), row.remark());
  }

  private void bypass(Layout layout) {
    BypassAdvice.of(findings, findings.endMs(), units)
        .ifPresent(
            advice -> {
              layout.heading("Bypass");
              layout.columns(NAME_WIDTH, "Share through the heater", advice.share(), "");
              advice
                  .flow()
                  .ifPresent(
                      flow -> layout.columns(NAME_WIDTH, "Flow through the heater", flow, ""));
              layout.columns(NAME_WIDTH, "Rise", advice.rise(), "");
              advice
                  .range()
                  .ifPresent(range -> layout.columns(NAME_WIDTH, range.name(), range.value(), ""));
              layout.paragraph("  ", advice.advice());
            });
  }

  private void steady(Layout layout) {
    List<SteadySpan> spans = findings.steady();
    if (spans.isEmpty()) {
      return;
    }
    SteadySpan longest =
        Collections.max(spans, Comparator.comparingLong(span -> span.endMs() - span.startMs()));
    layout.heading(
        "Steady running, "
            + moment.span(longest.startMs(), longest.endMs())
            + (spans.size() > 1 ? " (the longest of " + spans.size() + ")" : ""));
    FigureRows.ofSteady(longest, findings, units).forEach(row -> figure(layout, row));
    if (spans.size() > 1) {
      layout.heading("All steady spans");
      List<SteadySpan> first = spans.subList(0, Math.min(MOST_SPANS, spans.size()));
      SteadyLine.of(first, findings, units, moment).forEach(line -> layout.paragraph("  ", line));
    }
    if (spans.size() > MOST_SPANS) {
      layout.line("  and " + (spans.size() - MOST_SPANS) + " more; --json has them all");
    }
  }

  private void cycles(Layout layout) {
    List<CycleRow> rows = CycleRow.of(findings, units, moment);
    if (rows.isEmpty()) {
      return;
    }
    String unit = CycleRow.energyUnit(units);
    layout.heading("Compressor: " + CycleRow.summary(rows));
    TextTable table =
        new TextTable("", "Start to stop", "Ran", "Heat, " + unit, "Electric, " + unit, "COP");
    for (CycleRow row : rows.subList(0, Math.min(MOST_CYCLES, rows.size()))) {
      table.add(
          Integer.toString(row.number()),
          row.when(),
          row.ran(),
          row.heat(),
          row.electric(),
          row.cop());
    }
    table.lines().forEach(layout::line);
    if (rows.size() > MOST_CYCLES) {
      layout.line("  and " + (rows.size() - MOST_CYCLES) + " more; --json has them all");
    }
    layout.paragraph("  ", CycleRow.coverage(rows));
  }

  private void startup(Layout layout) {
    List<StartupRow> rows = StartupRow.of(findings, moment);
    if (!rows.isEmpty()) {
      layout.heading("Start-up list: " + StartupRow.summary(rows));
      rows.forEach(row -> layout.columns(NAME_WIDTH, row.title(), row.word(), row.evidence()));
    }
  }

  private void phases(Layout layout) {
    Map<Phase, Long> lengths = new EnumMap<>(Phase.class);
    findings
        .phases()
        .forEach(span -> lengths.merge(span.phase(), span.endMs() - span.startMs(), Long::sum));
    if (lengths.isEmpty()) {
      return;
    }
    layout.heading("Phases");
    lengths.forEach(
        (phase, length) ->
            layout.columns(NAME_WIDTH, Names.of(phase), Moment.duration(length), phase.meaning()));
  }

  private void channels(Layout layout) {
    layout.heading("Channels");
    findings.channels().forEach((channel, coverage) -> channel(layout, channel, coverage));
  }

  private void channel(Layout layout, Channel channel, ChannelCoverage coverage) {
    layout.columns(
        NAME_WIDTH,
        channel.id(),
        coverage.readings() + " readings",
        Figure.fixed(coverage.coverage() * 100, 1)
            + " % of the run, "
            + ReadingPace.words(channel, findings.channels()));
  }

  private void notes(Layout layout) {
    if (recording.notes().isEmpty()) {
      return;
    }
    layout.heading("Notes");
    for (Note note : recording.notes()) {
      layout.paragraph(moment.shortDayAndTime(note.timeMs()) + "  ", note.text());
    }
  }

  private void missing(Layout layout) {
    if (!findings.missing().isEmpty()) {
      layout.heading("Not known, and what to clip or state for it");
      findings.missing().forEach(text -> layout.paragraph("- ", text));
    }
  }
}
