package heatwake.analysis.heat;

import static org.assertj.core.api.Assertions.assertThat;

import com.hummeling.if97.IF97;
import heatwake.analysis.finding.FlowKnowledge;
import heatwake.analysis.flow.FlowBasis;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.reference.WorstDeviation;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import heatwake.analysis.water.PoolWater;
import heatwake.analysis.zero.Pair;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/**
 * From readings to heat against the general-purpose IF97 library: pools of 5 to 40 Cel, rises of
 * 0.5 to 10 K. EN 1434-1 and OIML R 75-1 permit a calculator 0.5 + 3 K / rise percent with a least
 * rise of 3 K; ours has to stay within a tenth of that, and within 0.05 %.
 */
class HeatArithmeticTest {
  private static final double PRESSURE_PA = 171_325;
  private static final double FLOW_M3_PER_S = 150e-3 / 60;

  @Test
  void staysWithinATenthOfACalculatorsPermittedError() {
    IF97 reference = new IF97(IF97.UnitSystem.SI);
    WorstDeviation worst = new WorstDeviation("heat against an IF97 library", "relative");
    for (double poolCel = 5; poolCel <= 40; poolCel += 5) {
      for (double riseK : new double[] {0.5, 1, 2, 3, 5, 10}) {
        double inK = 273.15 + poolCel;
        double expectedW =
            FLOW_M3_PER_S
                / reference.specificVolumePT(PRESSURE_PA, inK)
                * (reference.specificEnthalpyPT(PRESSURE_PA, inK + riseK)
                    - reference.specificEnthalpyPT(PRESSURE_PA, inK));
        double heatW = heatW(inK, riseK);
        worst.addRelative(heatW, expectedW, poolCel + " Cel, " + riseK + " K");
        double permitted = (0.5 + 3 / Math.max(3, riseK)) / 100;
        assertThat(Math.abs(heatW / expectedW - 1)).isLessThan(permitted / 10);
      }
    }
    worst.assertWithin(0.0005);
  }

  private static double heatW(double inK, double riseK) {
    Series.Builder in = Series.of(Channel.WATER_IN);
    Series.Builder out = Series.of(Channel.WATER_OUT);
    Series.Builder flow = Series.of(Channel.FLOW_HEATER);
    for (int s = 0; s < 10; s++) {
      in.add(s * 1000L, inK);
      out.add(s * 1000L, inK + riseK);
      flow.add(s * 1000L, FLOW_M3_PER_S);
    }
    Timeline timeline =
        Timeline.of(
            new Recording(
                1,
                Rigs.bare(),
                0,
                9000,
                Map.of(
                    Channel.WATER_IN, in.build(),
                    Channel.WATER_OUT, out.build(),
                    Channel.FLOW_HEATER, flow.build()),
                List.of(),
                List.of()));
    FlowBasis basis =
        new FlowBasis(
            "measured",
            FlowKnowledge.MEASURED,
            timeline.of(Channel.FLOW_HEATER),
            new ProbeUncertainty(0, 0.02, true),
            Channel.WATER_OUT,
            Optional.of(Channel.FLOW_HEATER));
    HeatStream heat =
        HeatStream.of(
            timeline,
            basis,
            new Pair(Channel.WATER_OUT, 0, 0.1, 0, 0.1),
            PoolWater.of(0, PRESSURE_PA));
    return new HeatSum(heat).add(0, timeline.size()).meanW().value();
  }
}
