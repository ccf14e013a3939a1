package heatwake.analysis.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What stands in a rig file for a quantity. */
class MeasureTest {
  @ParameterizedTest
  @ValueSource(strings = {"58", "58.", "5.8", ".58", "58e3", "-58", " 58 "})
  void aNumberAloneIsToldThatItWantsAUnit(String text) {
    assertThatThrownBy(() -> Measure.parse(Quantity.VOLUME, text))
        .hasMessage("\"" + text + "\" is not a number with a unit; write it like \"12.5 m3\"");
  }

  @Test
  void theSpaceBeforeTheUnitMayBeLeftOut() {
    assertThat(Measure.parse(Quantity.VOLUME, "58m3")).isEqualTo(58);
    assertThat(Measure.parse(Quantity.RATIO, "0.5 1")).isEqualTo(0.5);
    assertThat(Measure.parse(Quantity.VOLUME, "5.8e1 m3")).isEqualTo(58);
  }
}
