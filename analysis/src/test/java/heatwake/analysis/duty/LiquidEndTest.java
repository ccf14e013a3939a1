package heatwake.analysis.duty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.scenario.AtDuty;
import heatwake.analysis.uncertainty.Estimate;
import org.junit.jupiter.api.Test;

class LiquidEndTest {
  private static final double ICE_POINT_K = 273.15;

  private static Estimate cel(double value, double standard) {
    return new Estimate(ICE_POINT_K + value, standard);
  }

  /** Effectiveness against a medium that does not warm: 1 - exp(-NTU), any heat transfer text. */
  private static double bearsOut(double ntu) {
    return LiquidEnd.bearsOutMuchLiquid(
        AtDuty.sound().set(DutyFigure.SUBCOOLING_SHARE, 1 - Math.exp(-ntu), 0.03).duty());
  }

  @Test
  void isWhatTheEnteringWaterAllows() {
    // By hand: 9.7 K of 49.5 - 27.6 = 21.9 K.
    Estimate share = LiquidEnd.share(cel(49.5, 0.5), cel(39.8, 0.2), cel(27.6, 0.1)).orElseThrow();
    assertThat(share.value()).isCloseTo(9.7 / 21.9, within(1e-9));
    // GUM 5.1.3 note 2: each input moved by its uncertainty.
    double ofBubble = 10.2 / 22.4 - 9.7 / 21.9;
    double ofLiquid = 0.2 / 21.9;
    double ofWater = 9.7 / 21.8 - 9.7 / 21.9;
    assertThat(share.standard())
        .isCloseTo(
            Math.sqrt(ofBubble * ofBubble + ofLiquid * ofLiquid + ofWater * ofWater), within(5e-4));
    assertThat(LiquidEnd.share(cel(28, 0.5), cel(27, 0.2), cel(27.6, 0.1))).isEmpty();
  }

  @Test
  void scaleLowersItAndLiquidBackedUpRaisesIt() {
    // Sound: 6 K of 10.5 K (common practice), that is an NTU of 0.85.
    double sound = -Math.log(1 - 6 / 10.5);
    assertThat(bearsOut(sound)).isCloseTo(0.5, within(1e-9));
    // Scale that halves U.
    assertThat(bearsOut(sound / 2)).isZero();
    // Liquid in twice the area.
    assertThat(bearsOut(2 * sound)).isEqualTo(1);
  }

  @Test
  void aShareThatIsHardlyKnownBearsOutLess() {
    double known = LiquidEnd.bearsOutMuchLiquid(share(0.7, 0.02));
    double guessed = LiquidEnd.bearsOutMuchLiquid(share(0.7, 0.2));
    assertThat(guessed).isBetween(0.5, known);
    assertThat(LiquidEnd.bearsOutMuchLiquid(AtDuty.sound().duty())).isEqualTo(1);
  }

  private static Duty share(double value, double standard) {
    return AtDuty.sound().set(DutyFigure.SUBCOOLING_SHARE, value, standard).duty();
  }
}
