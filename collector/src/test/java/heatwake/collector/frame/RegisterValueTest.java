package heatwake.collector.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.collector.rig.ProbeSpec.RegisterType;
import heatwake.collector.rig.ProbeSpec.WordOrder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RegisterValueTest {
  private static double decode(RegisterType type, WordOrder order, int... words) {
    return RegisterValue.decode(type, order, words, 0);
  }

  // IEEE 754 single: 25.0625 = 41C8 8000, swapped -2.36e-41; 28.3 = 41E2 6666, swapped 2.72e23
  // (facts on field buses, 8f, computed).
  @Test
  void floatsInBothWordOrders() {
    assertThat(decode(RegisterType.FLOAT32, WordOrder.BIG, 0x41C8, 0x8000)).isEqualTo(25.0625);
    assertThat(decode(RegisterType.FLOAT32, WordOrder.LITTLE, 0x8000, 0x41C8)).isEqualTo(25.0625);
    assertThat(decode(RegisterType.FLOAT32, WordOrder.LITTLE, 0x41C8, 0x8000))
        .isCloseTo(-2.36e-41, within(0.01e-41));
    assertThat(decode(RegisterType.FLOAT32, WordOrder.BIG, 0x41E2, 0x6666))
        .isCloseTo(28.3, within(1e-6));
    assertThat(decode(RegisterType.FLOAT32, WordOrder.LITTLE, 0x41E2, 0x6666))
        .isCloseTo(2.72e23, within(0.01e23));
  }

  // Two's complement by definition.
  @ParameterizedTest
  @CsvSource({
    "INT16, 7FFF, 0, 32767",
    "INT16, 8000, 0, -32768",
    "UINT16, FFFF, 0, 65535",
    "INT32, FFFF, FFFF, -1",
    "INT32, 8000, 0, -2147483648",
    "UINT32, FFFF, FFFF, 4294967295",
    "UINT32, 1, 0, 65536",
  })
  void integers(RegisterType type, String high, String low, double value) {
    int first = Integer.parseInt(high, 16);
    int second = Integer.parseInt(low, 16);
    assertThat(decode(type, WordOrder.BIG, first, second)).isEqualTo(value);
    if (type.words() == 2) {
      assertThat(decode(type, WordOrder.LITTLE, second, first)).isEqualTo(value);
    }
  }
}
