package heatwake.dashboard.present;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class UnitChoiceTest {
  /** 3.785411784 L are a gallon (NIST SP 811, table of conversion factors). */
  @Test
  void condensateIsCaughtInTheBucketOfTheCountry() {
    double kgPerS = 3.785411784 / 3600;

    assertThat(UnitChoice.METRIC.condensate(kgPerS)).isEqualTo("3.8 kg/h");
    assertThat(UnitChoice.US.condensate(kgPerS)).isEqualTo("1.0 gal/h");
  }
}
