package heatwake.analysis.air;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Reference: ASHRAE Handbook, Fundamentals (2017), chapter 1, table 1. */
class AtmosphereTest {
  @ParameterizedTest
  @CsvSource({
    "-500, 107478",
    "0, 101325",
    "500, 95461",
    "1000, 89875",
    "4000, 61640",
    "10000, 26436"
  })
  void table1(double altitudeM, double pa) {
    assertThat(Atmosphere.standard(altitudeM).pa()).isCloseTo(pa, within(1.0));
  }

  @Test
  void namesValueUnitAndRange() {
    assertThatThrownBy(() -> Atmosphere.standard(20_000))
        .hasMessage("altitude 20000 m is outside -5000 to 11000 m");
  }
}
