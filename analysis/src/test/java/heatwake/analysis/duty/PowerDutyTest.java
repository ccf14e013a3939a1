package heatwake.analysis.duty;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.uncertainty.Estimate;
import java.util.EnumMap;
import java.util.Map;
import org.junit.jupiter.api.Test;

class PowerDutyTest {
  /** Heat of a twentieth at a quarter of the power, as a fan or a compressor without valves. */
  private static Map<DutyFigure, Estimate> little() {
    Map<DutyFigure, Estimate> figures = new EnumMap<>(DutyFigure.class);
    figures.put(DutyFigure.POWER, new Estimate(250, 3));
    figures.put(DutyFigure.POWER_RATIO, new Estimate(0.24, 0.01));
    figures.put(DutyFigure.HEAT_RATIO, new Estimate(0.06, 0.015));
    return figures;
  }

  private static boolean isFans(Map<DutyFigure, Estimate> figures) {
    return PowerDuty.isFans(new Duty(0, 600_000, figures), 1000);
  }

  @Test
  void aDrawThatWarmsNoWaterIsAFans() {
    assertThat(isFans(little())).isTrue();
  }

  /** Only a compressor heats the discharge line above the condensing temperature (physics). */
  @Test
  void unlessTheDischargeLineIsHotterThanTheHighSideCondenses() {
    Map<DutyFigure, Estimate> figures = little();
    figures.put(DutyFigure.DISCHARGE_SUPERHEAT, new Estimate(40, 1.5));
    assertThat(isFans(figures)).isFalse();
    // A line in the sun, or one that a stop has left warm.
    figures.put(DutyFigure.DISCHARGE_SUPERHEAT, new Estimate(14, 1.5));
    assertThat(isFans(figures)).isTrue();
  }
}
