package heatwake.dashboard.text;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Findings;
import heatwake.dashboard.example.InventedNight;
import heatwake.dashboard.present.Moment;
import heatwake.dashboard.present.UnitChoice;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

class FindingsTextTest {
  private static List<String> linesOf(Findings findings) {
    StringWriter text = new StringWriter();
    new FindingsText(
            InventedNight.recording(), findings, UnitChoice.METRIC, new Moment(ZoneOffset.UTC))
        .writeTo(new PrintWriter(text));
    return text.toString().lines().toList();
  }

  @Test
  void cyclesAreATableWithNumbersAtTheRight() {
    assertThat(linesOf(InventedNight.withCycles(11)))
        .containsSubsequence(
            "Compressor: 11 cycles; the compressor ran 11 h 40 min, 10 min to 10 h at a time",
            "      Start to stop                   Ran            Heat, kWh  Electric, kWh        COP",
            "   1  before 4 May 18:00 to 18:10  10 min          2.50 ± 0.11  0.500 ± 0.006  5.0 ± 0.2",
            "  11  since 4 May 20:00              10 h  2.50 ± 0.11 in 72 %  0.500 ± 0.006          –",
            "  Heat and electric energy count from the start until 3 min after the stop; \"in 72 %\": the heat is",
            "  known in that part of the time.");
  }

  @Test
  void noLineIsWiderThanATerminalOfAHundredColumns() {
    assertThat(linesOf(InventedNight.withCycles(70)))
        .contains("  and 10 more; --json has them all")
        .allSatisfy(line -> assertThat(line.length()).as(line).isLessThanOrEqualTo(100));
  }
}
