package heatwake.analysis.sensor;

import static org.assertj.core.api.Assertions.assertThat;

/** Takes apart what a loop made of a raw value. */
final class SensedValues {
  private SensedValues() {}

  static double si(Sensed sensed) {
    assertThat(sensed).isInstanceOf(Sensed.Value.class);
    return ((Sensed.Value) sensed).si();
  }

  static double cel(Sensed sensed) {
    return si(sensed) - 273.15;
  }

  static String fault(Sensed sensed) {
    assertThat(sensed).isInstanceOf(Sensed.Fault.class);
    return ((Sensed.Fault) sensed).reason();
  }
}
