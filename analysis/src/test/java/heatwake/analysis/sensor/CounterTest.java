package heatwake.analysis.sensor;

import static heatwake.analysis.sensor.SensedValues.fault;
import static heatwake.analysis.sensor.SensedValues.si;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.Quantity;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;

/** Pulse and register counters; expected values are counted by hand. */
class CounterTest {
  private static final CountRegister SIXTEEN_BITS = new CountRegister(65536, 200);

  /** One litre per pulse at 2 L/s. */
  @Test
  void pulsesGiveTheMeanFlowSinceTheLastReading() {
    Conversion probe = new PulseRate(Quantity.FLOW, 1e-3, SIXTEEN_BITS).begin();
    assertThat(probe.next(1000, 0)).isInstanceOf(Sensed.Pending.class);
    assertThat(si(probe.next(1020, 10_000))).isCloseTo(2e-3, within(1e-12));
    assertThat(si(probe.next(1020, 15_000))).isZero();
  }

  @Test
  void rollsOverThroughZero() {
    Conversion probe = new PulseRate(Quantity.FLOW, 1e-3, SIXTEEN_BITS).begin();
    probe.next(65_530, 0);
    assertThat(si(probe.next(14, 10_000))).isCloseTo(2e-3, within(1e-12));
  }

  @Test
  void aFallThatIsNoRollOverIsAReset() {
    Conversion probe = new PulseRate(Quantity.FLOW, 1e-3, SIXTEEN_BITS).begin();
    probe.next(30_000, 0);
    assertThat(fault(probe.next(14, 10_000)))
        .isEqualTo(
            "the counter fell from 30000 to 14 in 10 s; taken as a reset, what was counted before"
                + " it is lost");
    assertThat(si(probe.next(34, 20_000))).isCloseTo(2e-3, within(1e-12));
  }

  @Test
  void moreThanCanBeTrueIsAnotherCounter() {
    Conversion probe = new PulseRate(Quantity.FLOW, 1e-3, SIXTEEN_BITS).begin();
    probe.next(100, 0);
    assertThat(fault(probe.next(40_000, 10_000)))
        .isEqualTo(
            "the counter jumped from 100 to 40000 in 10 s, more than it can have counted; taken as"
                + " another counter");
  }

  @Test
  void twoCountsAtOneInstantGiveNoRate() {
    Conversion probe = new PulseRate(Quantity.POWER, 3600, SIXTEEN_BITS).begin();
    probe.next(1, 5);
    assertThat(fault(probe.next(2, 5))).contains("no time between them");
    assertThat(si(probe.next(11, 36_005))).isCloseTo(1000, within(1e-9));
  }

  /** A five-digit kWh register that passes zero, is exchanged, and goes on. */
  @Test
  void registerTotalRisesThroughRollOverAndReset() {
    CountRegister fiveDigits = new CountRegister(100_000, 0.01);
    Conversion probe = new RegisterTotal(Quantity.ENERGY, 3.6e6, fiveDigits).begin();
    assertThat(si(probe.next(99_999, 0)) / 3.6e6).isCloseTo(99_999, within(1e-6));
    assertThat(si(probe.next(3, 3_600_000)) / 3.6e6).isCloseTo(100_003, within(1e-6));
    assertThat(fault(probe.next(1, 7_200_000))).contains("fell from 3 to 1");
    assertThat(si(probe.next(4, 10_800_000)) / 3.6e6).isCloseTo(100_007, within(1e-6));
    assertThat(fault(probe.next(-1, 10_900_000))).contains("does not go below zero");
  }

  @Property
  void nothingIsLostOrInventedThroughRollOvers(
      @ForAll @IntRange(min = 0, max = 65535) int start, @ForAll long seed) {
    Random random = new Random(seed);
    Conversion total =
        new RegisterTotal(Quantity.VOLUME, 1, new CountRegister(65536, Double.POSITIVE_INFINITY))
            .begin();
    double first = si(total.next(start, 0));
    long counted = start;
    double now = first;
    for (int i = 1; i <= 200; i++) {
      counted += random.nextInt(6000);
      now = si(total.next((double) (counted % 65536), i * 1000L));
    }
    assertThat(now - first).isEqualTo((double) counted - start);
  }

  @Test
  void refusesConstantsThatCountNothing() {
    assertThatThrownBy(() -> new PulseRate(Quantity.FLOW, 0, SIXTEEN_BITS))
        .hasMessage("a pulse must stand for more than nothing, not 0.0");
    assertThatThrownBy(() -> new PulseRate(Quantity.TEMPERATURE, 1, SIXTEEN_BITS))
        .hasMessage("pulses per time give a volume flow or a power, not a temperature");
    assertThatThrownBy(() -> new CountRegister(-5, 1)).hasMessageContaining("-5");
  }
}
