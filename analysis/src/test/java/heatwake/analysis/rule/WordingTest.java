package heatwake.analysis.rule;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.uncertainty.Estimate;
import org.junit.jupiter.api.Test;

/** Figures in the sentences of rules. The minus sign is U+2212 (ISO 80000-1, 7.2). */
class WordingTest {
  @Test
  void aFigureBelowNothingHasAMinusSign() {
    assertThat(Wording.celsius(273.15 - 18.9)).isEqualTo("\u221218.9 °C");
    assertThat(Wording.kelvin(-2)).isEqualTo("\u22122.0 K");
    assertThat(Wording.kelvin(new Estimate(-0.09, 0.005))).isEqualTo("\u22120.09 ± 0.01 K");
    assertThat(Wording.percent(-0.21)).isEqualTo("\u221221 %");
    assertThat(Wording.reading(Channel.WATER_OUT, 273.15 - 127)).isEqualTo("\u2212127.0 °C");
    assertThat(Wording.kelvin(-1e12)).isEqualTo("\u22121e12 K");
  }

  @Test
  void nothingHasNoSign() {
    assertThat(Wording.celsius(273.15 - 0.04)).isEqualTo("0.0 °C");
    assertThat(Wording.percent(-0.004)).isEqualTo("0 %");
  }
}
