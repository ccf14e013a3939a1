package heatwake.dashboard.present;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Findings;
import heatwake.dashboard.example.InventedNight;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Figures worked by hand from the exact factors of NIST Special Publication 811: 1 K is 1.8 °F, the
 * ice point 32 °F, a US gallon 3.785411784 L, a psi 6894.757 Pa.
 */
class UsSentenceTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Evaporating 12.0 K below the entering air (at 7.5 °C) | Evaporating 21.6 °F below the entering air (at 45.5 °F)",
        "1.52 to 2.31 MPa in 140 s | 220 to 335 psi in 140 s",
        "rise 3.00 ± 0.25 K at 62 L/min | rise 5.40 ± 0.45 °F at 16.4 gal/min",
        "nameplate 90 to 200 L/min | nameplate 23.8 to 52.8 gal/min",
        "zero of the pair: it moved by +0.20 K | zero of the pair: it moved by +0.36 °F",
        "air of −5.0 °C | air of 23.0 °F",
        "filter pressure climbed from 60 kPa to 84 kPa | filter pressure climbed from 8.7 psi to 12.2 psi",
        "possible is −15 to 95 °C | possible is 5 to 203 °F",
        "15.3 kW at 230 V, 0.12 kg/s of air | 15.3 kW at 230 V, 0.12 kg/s of air",
        "R-32 K; run 3; 7 starts in 60 min | R-32 K; run 3; 7 starts in 60 min",
        "2031-05-04 18:00 UTC, COP 5.1 ± 0.3 | 2031-05-04 18:00 UTC, COP 5.1 ± 0.3",
        "warms by 0.4 K a day | warms by 0.7 °F a day"
      })
  void figuresAreInUsUnits(String metric, String us) {
    assertThat(UsSentence.of(metric)).isEqualTo(us);
  }

  @Test
  void metricSentencesStayAsTheyAre() {
    Findings night = InventedNight.findings();
    assertThat(UnitChoice.METRIC.worded(night)).isEqualTo(night);
  }
}
