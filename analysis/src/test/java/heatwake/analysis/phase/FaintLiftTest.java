package heatwake.analysis.phase;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.RunBuilder;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * A worn compressor of a small heater: it turns, takes little more than its fan, warms nothing and
 * parts the gauges by a few per cent. The set temperature is 28 Cel, the gauges rest at 1.38 MPa.
 */
class FaintLiftTest {
  private static List<String> flags(double highKPa, double lowKPa) {
    return Analysis.of(
            RunBuilder.run()
                .every(5)
                .pool(24)
                .air(20)
                .only(
                    Channel.WATER_IN,
                    Channel.WATER_OUT,
                    Channel.POWER,
                    Channel.AIR_IN,
                    Channel.PRESSURE_DISCHARGE,
                    Channel.PRESSURE_SUCTION)
                .heatingAt(Channel.POWER, 243)
                .heatingAt(Channel.WATER_OUT, 0.1)
                .heatingAt(Channel.PRESSURE_DISCHARGE, highKPa)
                .heatingAt(Channel.PRESSURE_SUCTION, lowKPa)
                .circulating(20)
                .fan(0.5)
                .heating(90)
                .circulating(20)
                .recording())
        .flags()
        .stream()
        .map(Flag::rule)
        .toList();
  }

  @Test
  void gaugesThatPartWithTheDrawShowThatTheCompressorTurns() {
    assertThat(flags(1475, 1316)).contains("no-pressure-rise").doesNotContain("no-compressor");
  }

  /** A fan brings the coil nearer to its air: both sides alike, or one alone. */
  @Test
  void gaugesThatMoveAlikeShowAFan() {
    assertThat(flags(1400, 1398)).contains("no-compressor").doesNotContain("no-pressure-rise");
    assertThat(flags(1470, 1380)).doesNotContain("no-pressure-rise");
  }
}
