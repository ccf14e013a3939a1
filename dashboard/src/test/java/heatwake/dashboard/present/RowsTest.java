package heatwake.dashboard.present;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Consequence;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Reason;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Verdict;
import heatwake.dashboard.example.InventedNight;
import heatwake.dashboard.json.FindingsJson;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class RowsTest {
  private static final Moment UTC = new Moment(ZoneOffset.UTC);

  @Test
  void flagsSayWhenAndForHowLong() {
    List<FlagRow> rows = FlagRow.of(InventedNight.findings(), UTC);
    assertThat(rows.get(1).title()).isEqualTo("Short cycling");
    assertThat(rows.get(1).when()).isEqualTo("5 May 00:50 to 01:50, 1 h");
    assertThat(rows.get(1).causes())
        .isEqualTo("Likely: thermostat differential too small; or flow switch chatters");
  }

  @Test
  void cyclesSayWhenTheyRanAndWhatTheyGave() {
    List<CycleRow> rows = CycleRow.of(InventedNight.withCycles(3), UnitChoice.METRIC, UTC);
    // 9 MJ are 2.5 kWh; 0.2 MJ with k = 2 are 0.11 kWh. 1.8 MJ are 0.5 kWh, 0.01 MJ 0.006 kWh.
    assertThat(rows.get(1))
        .isEqualTo(
            new CycleRow(
                2,
                "4 May 18:12 to 18:22",
                "10 min",
                "2.50 ± 0.11",
                "0.500 ± 0.006",
                "5.0 ± 0.2",
                InventedNight.minute(12),
                InventedNight.minute(22)));
    assertThat(rows.get(0).when()).isEqualTo("before 4 May 18:00 to 18:10");
    assertThat(rows.get(2).when()).isEqualTo("since 4 May 18:24");
    assertThat(rows.get(2).cop()).isEqualTo("–");
    assertThat(rows.get(2).heat()).isEqualTo(rows.get(1).heat() + " in 72 %");
    assertThat(rows.get(2).endMs()).isEqualTo(InventedNight.minute(720));
  }

  @Test
  void whatStandsForAPartIsExplainedByAFigureOfTheTable() {
    CycleRow part = new CycleRow(1, "", "", "49.0 ± 4.0 in 97 %", "", "", 0, 1);
    assertThat(CycleRow.coverage(List.of(part))).contains("\"in 97 %\"");
  }

  /** A COP that cannot be is doubted wherever it stands. */
  @Test
  void anImpossibleCopIsSaidNotToBeBelieved() {
    Findings night = InventedNight.doubted("a COP of 31.7 cannot be right: no heater exceeds 20");
    List<CycleRow> cycles = CycleRow.of(night, UnitChoice.METRIC, UTC);
    assertThat(cycles).extracting(CycleRow::cop).allMatch(cop -> cop.matches("–|.* \\?"));
    assertThat(cycles).extracting(CycleRow::cop).anyMatch(cop -> cop.endsWith(" ?"));
    assertThat(CycleRow.coverage(cycles))
        .endsWith("; \"?\": the COP of the run is not to be believed.");
    assertThat(FigureRows.ofRun(night, UnitChoice.METRIC, UTC))
        .filteredOn(row -> row.name().equals("COP"))
        .extracting(FigureRow::remark)
        .containsExactly("not to be believed: a COP of 31.7 cannot be right: no heater exceeds 20");
    assertThat(FigureRows.ofSteady(night.steady().get(0), night, UnitChoice.METRIC))
        .extracting(FigureRow::name)
        .contains("COP, not to be believed")
        .doesNotContain("COP");
    assertThat(EndedTiles.of(night, UnitChoice.METRIC).figures())
        .filteredOn(tile -> tile.name().equals("COP of the run"))
        .allMatch(tile -> tile.foot().endsWith(", not to be believed"));
    assertThat(FindingsJson.of(night).at("/heat/cop_doubt").asText()).contains("31.7");
    assertThat(FindingsJson.of(night).at("/steady/0/cop_doubt").asText()).contains("31.7");
    assertThat(FindingsJson.of(InventedNight.findings()).at("/heat").has("cop_doubt")).isFalse();
  }

  /** The pump of the invented night stops half an hour before its end. */
  @Test
  void aPoolThatWasLastSeenBeforeTheEndHasItsTime() {
    Findings night = Analysis.of(InventedNight.recording());
    assertThat(FigureRows.ofRun(night, UnitChoice.METRIC, UTC))
        .filteredOn(row -> row.name().startsWith("Pool "))
        .first()
        .satisfies(
            row -> {
              assertThat(row.name()).isEqualTo("Pool when last seen");
              assertThat(row.remark()).startsWith("at 5 May 05:2");
            });
  }

  /** Heat of half the night over the electric energy of all of it is no COP. */
  @Test
  void electricEnergyIsForTheHeatOnlyWhereBothAreKnownThroughout() {
    assertThat(FigureRows.ofRun(InventedNight.findings(), UnitChoice.METRIC, UTC))
        .extracting(FigureRow::name)
        .contains("Electric energy for it");
    Findings withHole = Analysis.of(InventedNight.recording());
    assertThat(KnownPart.isAll(withHole.heat().deliveredKnown())).isFalse();
    assertThat(FigureRows.ofRun(withHole, UnitChoice.METRIC, UTC))
        .extracting(FigureRow::name)
        .contains("Electric energy, heater on")
        .doesNotContain("Electric energy for it");
  }

  @Test
  void cyclesAreSummedUp() {
    assertThat(summary(1)).isEqualTo("1 cycle; the compressor ran 12 h");
    // Two of 10 min, and from minute 24 to the end of the night at minute 720.
    assertThat(summary(3))
        .isEqualTo("3 cycles; the compressor ran 11 h 56 min, 10 min to 11 h 36 min at a time");
  }

  private static String summary(int cycles) {
    return CycleRow.summary(CycleRow.of(InventedNight.withCycles(cycles), UnitChoice.METRIC, UTC));
  }

  @Test
  void theStartupListIsSummedUp() {
    List<StartupRow> rows = StartupRow.of(InventedNight.findings(), UTC);
    assertThat(rows).hasSize(14);
    assertThat(StartupRow.summary(rows))
        .isEqualTo("10 passed, 1 failed, 2 not seen yet, 1 not measured");
    assertThat(rows.get(0).time()).isEqualTo("18:24");
  }

  @Test
  void theVerdictSaysHowSureItIs() {
    VerdictWords words = VerdictWords.of(InventedNight.findings().verdict());
    assertThat(words.headline()).isEqualTo("Control: thermostat, switches or settings");
    assertThat(words.sureness()).isEqualTo("likely, confidence 80 %");
    assertThat(VerdictWords.of(new Verdict(Side.UNDECIDED, 0, List.of(), List.of())).sureness())
        .isEmpty();
  }

  /** The offset is subtracted, so it takes nothing from the heater; but it is not nothing. */
  @Test
  void aProbeThatIsOffIsSaidInTheHeadlineOfASoundHeater() {
    assertThat(headlineBeside("probe-offset"))
        .isEqualTo("The heater seems sound, but a probe is off");
    assertThat(headlineBeside("clock-step")).isEqualTo("Nothing wrong found");
  }

  private static String headlineBeside(String rule) {
    Flag note = new Flag(rule, Side.MEASUREMENT, Severity.INFO, 0, 600_000, "x", List.of(), "y");
    return VerdictWords.of(
            new Verdict(Side.HEALTHY, 0.9, List.of(new Reason.Notes(note)), List.of()))
        .headline();
  }

  @Test
  void whatAFlagExplainsIsSaidOnceAndNotInTheVerdictToo() {
    Flag flag =
        new Flag(
            "low-heater-flow",
            Side.WATER,
            Severity.WARNING,
            0,
            600_000,
            "Flow 32 L/min. Follows from it: low-cop (COP 4.1)",
            List.of(),
            "Open the bypass.",
            Set.of(),
            List.of(new Consequence("low-cop", "COP 4.1")));
    Verdict verdict =
        new Verdict(
            Side.WATER,
            0.8,
            List.of(
                new Reason.Blames(flag),
                new Reason.Sentence("fits too little water"),
                new Reason.Beside(flag)),
            List.of());
    assertThat(VerdictWords.of(verdict).because())
        .containsExactly(
            "Low heater flow: Flow 32 L/min",
            "Fits too little water",
            "Also low heater flow (water): Flow 32 L/min");
    // Two troubles, each shown by itself: only their order is open.
    assertThat(
            VerdictWords.of(new Verdict(Side.WATER, 0.34, verdict.reasons(), List.of())).sureness())
        .isEqualTo("that this comes first: a guess so far, confidence 34 %");
    FlagRow row = new FlagRow("Low heater flow", "", Severity.WARNING, flag);
    assertThat(row.evidence()).isEqualTo("Flow 32 L/min");
    assertThat(row.consequences()).containsExactly("It explains: Low COP. COP 4.1");
  }

  @Test
  void theLogHasNotesAndEventsTheLatestFirst() {
    List<LogRow> rows = LogRow.of(InventedNight.recording(), UTC);
    assertThat(rows)
        .extracting(LogRow::text)
        .containsExactly(
            "owner's dog <b>asleep</b> on the lid",
            "air-in has been silent for 25 min",
            "bypass moved one quarter towards the heater");
    assertThat(rows.get(1).when()).isEqualTo("5 May 00:40, 25 min");
  }

  @Test
  void aSpanNamesItsDayOnceAndSecondsOnlyWithinAMinute() {
    long start = InventedNight.START_MS;
    assertThat(UTC.span(start, start + 2_400_000)).isEqualTo("4 May 18:00 to 18:40");
    assertThat(UTC.span(start, start + 30_000)).isEqualTo("4 May 18:00:00 to 18:00:30");
    assertThat(UTC.spanWithYear(start, start + 30_000))
        .isEqualTo("4 May 2031 18:00:00 to 18:00:30");
    assertThat(UTC.spanWithYear(start, start + 43_200_000))
        .isEqualTo("4 May 2031 18:00 to 5 May 2031 06:00");
  }

  @Test
  void clockTimesSayTheirZone() {
    Moment berlin = new Moment(ZoneId.of("Europe/Berlin"));
    assertThat(berlin.clock(InventedNight.START_MS)).isEqualTo("20:00");
    assertThat(berlin.zoneAt(InventedNight.START_MS)).isEqualTo("CEST, UTC+02:00");
    assertThat(UTC.zoneAt(InventedNight.START_MS)).isEqualTo("UTC");
    assertThat(new Moment(ZoneOffset.ofHours(-5)).zoneAt(0)).isEqualTo("UTC-05:00");
  }

  @Test
  void readingsOfARunThatIsOverSayHowLongBeforeItsEndTheyAre() {
    List<ReadingRow> rows = ReadingRow.atEnd(InventedNight.recording(), UnitChoice.METRIC);
    assertThat(rows).extracting(ReadingRow::age).containsOnly("at the end");
  }
}
