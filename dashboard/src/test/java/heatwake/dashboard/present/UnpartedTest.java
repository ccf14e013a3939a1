package heatwake.dashboard.present;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The SI brochure (9th edition, 5.4.3): a space parts number and unit; no line should. */
class UnpartedTest {
  @ParameterizedTest
  @ValueSource(strings = {"5.1 K", "76 %", "59 ± 3 %", "53 L/min", "45.2 °C", "8.4 h", "16 m³/h"})
  void aNumberIsNotPartedFromItsUnit(String figure) {
    assertThat(Unparted.of("is " + figure + " here").split(" ")).hasSize(3);
    for (int i = figure.indexOf(' '); i >= 0; i = figure.indexOf(' ', i + 1)) {
      assertThat(Unparted.mayEndAt(figure, i)).isFalse();
    }
    assertThat(Unparted.plain(Unparted.of(figure))).isEqualTo(figure);
  }

  @Test
  void aChannelsNameIsNotPartedAtItsHyphen() {
    String text = "clip flow-heater - or flow-total";
    assertThat(Unparted.mayEndAt(text, text.indexOf('-'))).isFalse();
    assertThat(Unparted.mayEndAt(text, text.lastIndexOf('-'))).isFalse();
    assertThat(Unparted.mayEndAt(text, text.indexOf(" -") + 1)).isTrue();
  }

  @Test
  void otherSpacesStayWhatTheyWere() {
    String text = "27 Nov, 3 Kelvin probes, 12 hours, at 20:58 he saw 5 heaters";
    assertThat(Unparted.of(text)).isEqualTo(text);
    assertThat(Unparted.mayEndAt(text, 2)).isTrue();
  }
}
