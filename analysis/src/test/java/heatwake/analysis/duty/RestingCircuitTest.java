package heatwake.analysis.duty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** R-410A boils at 53 Cel under 3.2 MPa (gauge); water of 26 Cel, air of 24 Cel. */
class RestingCircuitTest {
  private static RunBuilder standingAt(double kPa) {
    return RunBuilder.run().set(Channel.PRESSURE_DISCHARGE, kPa);
  }

  private static Optional<Estimate> excess(RunBuilder run) {
    var recording = run.recording();
    return RestingCircuit.excessK(recording.rig(), Timeline.of(recording), run.truth());
  }

  @Test
  void aRestThatWasThereFromTheBeginningIsASettledOne() {
    assertThat(excess(standingAt(3200).circulating(5)).orElseThrow().value())
        .isCloseTo(27, within(1.0));
    assertThat(excess(standingAt(1600).circulating(5)).orElseThrow().value()).isLessThan(0);
  }

  @Test
  void aPressureThatStillFallsIsNot() {
    assertThat(
            excess(
                standingAt(3200)
                    .change(Channel.PRESSURE_DISCHARGE, (atS, kPa) -> kPa - atS)
                    .circulating(5)))
        .isEmpty();
  }

  /** What stands beside the condenser may be as hot as it. */
  @Test
  void standingWaterSaysNothingOfTheCondenser() {
    assertThat(excess(standingAt(3200).off(5))).isEmpty();
  }

  @Test
  void aShortRestThatFollowsARunIsNotSettled() {
    assertThat(excess(RunBuilder.run().heating(20).circulating(5))).isEmpty();
  }

  /** No air is hotter than 45 Cel: what stands above saturation there is no refrigerant's alone. */
  @Test
  void withoutAnAirProbeTheHottestAirIsTaken() {
    assertThat(excess(withoutAir(3200)).orElseThrow().value()).isCloseTo(8, within(1.0));
    assertThat(excess(withoutAir(2500))).isEmpty();
  }

  private static RunBuilder withoutAir(double kPa) {
    return standingAt(kPa).without(Channel.AIR_IN, Channel.AIR_AMBIENT).circulating(5);
  }
}
