package heatwake.dashboard.present;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.uncertainty.Estimate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FigureTest {
  private static final Unit KILOWATT = Unit.of(Quantity.POWER, "kW");

  @ParameterizedTest
  @CsvSource({
    "15312, 352, 15.3 ± 0.7 kW",
    "15312, 70, 15.31 ± 0.14 kW",
    "15312, 0, 15.3 kW",
    "15312, 8000, 15 ± 16 kW",
    "-120, 30, −0.12 ± 0.06 kW",
    "-0.1, 300, 0.0 ± 0.6 kW",
    "0.17, 0.002, under 0.001 kW",
  })
  void valueEndsAtThePlaceOfItsUncertainty(double watt, double standard, String text) {
    assertThat(Figure.of(new Estimate(watt, standard), KILOWATT)).isEqualTo(text);
  }

  @Test
  void temperatureUncertaintyTakesNoOffset() {
    assertThat(Figure.of(new Estimate(301.15, 0.05), Unit.of(Quantity.TEMPERATURE, "Cel")))
        .isEqualTo("28.00 ± 0.10 °C");
  }

  @ParameterizedTest
  @CsvSource({"12000, 12 s", "250000, 4 min 10 s", "50280000, 13 h 58 min", "3600000, 1 h"})
  void durationIsReadAtAGlance(long ms, String text) {
    assertThat(Moment.duration(ms)).isEqualTo(text);
  }

  @Test
  void whatNoProbeMeansIsShort() {
    assertThat(Figure.fixed(1e300, 1)).isEqualTo("1e300");
    assertThat(Figure.fixed(-1.2345e12, 2)).isEqualTo("−1.23e12");
    assertThat(Figure.of(1e300, KILOWATT)).isEqualTo("1e297 kW");
    assertThat(Figure.fixed(123456, 1)).isEqualTo("123456.0");
    assertThat(Figure.fixed(1e-300, 1)).isEqualTo("0.0");
  }

  @Test
  void whatWasStatedHasNoMoreDigitsThanItTook() {
    Unit kelvin = Unit.of(Quantity.TEMPERATURE_DIFFERENCE, "K");
    assertThat(Figure.stated(0.1, kelvin)).isEqualTo("0.1 K");
    assertThat(Figure.stated(0.25, kelvin)).isEqualTo("0.25 K");
    assertThat(Figure.stated(2, kelvin)).isEqualTo("2 K");
    assertThat(Figure.stated(200, kelvin)).isEqualTo("200 K");
  }

  @Test
  void noUnitIsWrittenInBrackets() {
    assertThat(Unit.all())
        .allSatisfy(unit -> assertThat(Figure.symbol(unit)).doesNotContain("[", "_"));
  }
}
