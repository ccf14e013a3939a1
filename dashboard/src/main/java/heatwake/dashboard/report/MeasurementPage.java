package heatwake.dashboard.report;

import com.lowagie.text.Document;
import com.lowagie.text.Font;
import com.lowagie.text.pdf.PdfPTable;
import heatwake.analysis.finding.ChannelCoverage;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.series.Note;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.RunEvent;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.dashboard.present.Figure;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.StartupRow;
import heatwake.dashboard.present.Tone;
import heatwake.dashboard.present.UnitChoice;
import java.util.List;
import java.util.Optional;

/** The last page: start-up list, what was clipped, what happened to the recording, cautions. */
final class MeasurementPage {
  private static final int MOST_EVENTS = 12;
  private static final int PROBE_COLUMNS = 3;

  private final Blocks blocks;
  private final ReportFonts fonts;
  private final Recording recording;
  private final Findings findings;
  private final UnitChoice units;
  private final Moment moment;

  MeasurementPage(
      Blocks blocks, Recording recording, Findings findings, UnitChoice units, Moment moment) {
    this.blocks = blocks;
    this.fonts = blocks.fonts();
    this.recording = recording;
    this.findings = findings;
    this.units = units;
    this.moment = moment;
  }

  void addTo(Document document) {
    startup(document);
    probes(document);
    notes(document);
    events(document);
    missing(document);
    new ClosingBlock(blocks).addTo(document);
  }

  private void startup(Document document) {
    List<StartupRow> rows = StartupRow.of(findings, moment);
    if (rows.isEmpty()) {
      return;
    }
    document.add(blocks.heading("Start-up list: " + StartupRow.summary(rows)));
    PdfPTable table = blocks.table(29, 15.5f, 69.5f);
    for (StartupRow row : rows) {
      table.addCell(blocks.cell(row.title(), fonts.text()));
      table.addCell(blocks.cell(row.word(), inColour(row.result())));
      table.addCell(blocks.cell(row.evidence(), fonts.soft()));
    }
    document.add(table);
  }

  private Font inColour(StartupCheck.Result result) {
    Font font = fonts.strong();
    font.setColor(
        Blocks.colour(
            switch (result) {
              case PASS -> Tone.GOOD;
              case FAIL -> Tone.WARNING;
              case NOT_SEEN, NOT_MEASURED -> Tone.PLAIN;
            }));
    return font;
  }

  private void probes(Document document) {
    document.add(
        blocks.heading(
            "What was measured: readings, share of the run covered, standard uncertainty of one reading"));
    PdfPTable table = blocks.table(32, 24, 20, 4, 32, 24, 20);
    List<Channel> channels = List.copyOf(findings.channels().keySet());
    int half = (channels.size() + 1) / 2;
    for (int i = 0; i < half; i++) {
      addProbe(table, channels.get(i));
      table.addCell(blocks.frame());
      if (half + i < channels.size()) {
        addProbe(table, channels.get(half + i));
      } else {
        for (int column = 0; column < PROBE_COLUMNS; column++) {
          table.addCell(blocks.frame());
        }
      }
    }
    document.add(table);
  }

  private void addProbe(PdfPTable table, Channel channel) {
    ChannelCoverage coverage = findings.channels().get(channel);
    table.addCell(blocks.cell(channel.id(), fonts.soft()));
    table.addCell(
        blocks.cell(
            coverage.readings() + ", " + Figure.fixed(coverage.coverage() * 100, 1) + " %",
            fonts.soft()));
    table.addCell(blocks.cell(uncertainty(channel), fonts.soft()));
  }

  private String uncertainty(Channel channel) {
    return Optional.ofNullable(recording.rig().probes().get(channel))
        .map(probe -> inWords(channel, probe.uncertainty()))
        .orElse("not stated");
  }

  private String inWords(Channel channel, ReadingUncertainty uncertainty) {
    if (uncertainty instanceof ReadingUncertainty.Absolute absolute) {
      Quantity quantity =
          channel.quantity() == Quantity.TEMPERATURE
              ? Quantity.TEMPERATURE_DIFFERENCE
              : channel.quantity();
      return Figure.stated(absolute.si(), units.of(quantity).unit());
    }
    if (uncertainty instanceof ReadingUncertainty.Relative relative) {
      return Figure.stated(relative.share(), Unit.of(Quantity.RATIO, "%"));
    }
    return "not stated";
  }

  private void notes(Document document) {
    if (recording.notes().isEmpty()) {
      return;
    }
    document.add(blocks.heading("Notes"));
    PdfPTable table = blocks.table(22, 92);
    for (Note note : recording.notes()) {
      table.addCell(blocks.cell(moment.shortDayAndTime(note.timeMs()), fonts.soft()));
      table.addCell(blocks.cell(note.text(), fonts.text()));
    }
    document.add(table);
  }

  private void events(Document document) {
    List<RunEvent> events = recording.events();
    if (events.isEmpty()) {
      return;
    }
    document.add(blocks.heading("What happened to the recording"));
    PdfPTable table = blocks.table(34, 22, 58);
    for (RunEvent event : events.subList(0, Math.min(MOST_EVENTS, events.size()))) {
      table.addCell(blocks.cell(when(event), fonts.soft()));
      table.addCell(blocks.cell(event.subject(), fonts.text()));
      table.addCell(
          blocks.cell(
              event.text() + (event.count() > 1 ? " (" + event.count() + " times)" : ""),
              fonts.text()));
    }
    document.add(table);
    if (events.size() > MOST_EVENTS) {
      document.add(
          blocks.paragraph(
              "and " + (events.size() - MOST_EVENTS) + " more in the database", fonts.soft()));
    }
  }

  private String when(RunEvent event) {
    if (event.endMs().isEmpty()) {
      return "since " + moment.shortDayAndTime(event.startMs());
    }
    long end = event.endMs().getAsLong();
    return end - event.startMs() < 1000
        ? moment.shortDayAndTime(event.startMs())
        : moment.span(event.startMs(), end);
  }

  private void missing(Document document) {
    if (findings.missing().isEmpty()) {
      return;
    }
    document.add(blocks.heading("Not known, and what to clip or state for it"));
    document.add(blocks.halves(findings.missing(), fonts.soft()));
  }
}
