package heatwake.analysis.verdict;

import static heatwake.analysis.verdict.AtPartSpeed.nearlyWarm;
import static heatwake.analysis.verdict.AtPartSpeed.slow;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.scenario.AtDuty;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.site.Pool;
import org.junit.jupiter.api.Test;

/** What speaks for a heater that was seen at part speed alone. */
class SoundAtPartSpeedTest {
  @Test
  void lessPowerThanThePlatesWithASoundCircuitIsPartSpeed() {
    Soundness sound = Soundness.of(nearlyWarm(slow()).evidence());
    assertThat(sound.confidence()).isEqualTo(0.7);
    assertThat(sound.because())
        .containsExactly(
            "COP is 103 ± 10 % of the nameplate's, at part speed (power 78 ± 5 % of it)");
  }

  /**
   * Speed-controlled heaters slow down near the set temperature, or by a setting (common practice).
   * A compressor whose valves leak moves less gas and takes less power too.
   */
  @Test
  void partSpeedThatNothingAsksForIsNotCalledHealth() {
    Soundness all = Soundness.of(slow().evidence());
    assertThat(all.confidence()).isZero();
    assertThat(all.because().get(1)).contains("not near the set temperature");
    assertThat(all.wouldDecide().get(0)).contains("economy setting");
    AtDuty later = nearlyWarm(slow().lasting(60).then()).lasting(60);
    assertThat(Soundness.of(later.evidence()).confidence()).isZero();
    AtDuty slowsDown =
        nearlyWarm(slow().set(DutyFigure.POWER_RATIO, 0.97, 0.025).lasting(60).then())
            .set(DutyFigure.POWER_RATIO, 0.7, 0.025)
            .lasting(200);
    assertThat(Soundness.of(slowsDown.evidence()).confidence()).isEqualTo(0.7);
  }

  /** Whether anything asked for it is not known without a set temperature. */
  @Test
  void partSpeedAloneWithoutASetTemperatureIsNotCalledHealth() {
    AtDuty slow = AtDuty.sound(Rigs.withPool(Pool.UNKNOWN));
    slow.set(DutyFigure.HEAT_RATIO, 0.65, 0.03)
        .set(DutyFigure.POWER_RATIO, 0.55, 0.025)
        .set(DutyFigure.COP_RATIO, 1.18, 0.07);
    Soundness alone = Soundness.of(slow.lasting(60).evidence());
    assertThat(alone.confidence()).isZero();
    assertThat(alone.because().get(1)).contains("never seen faster", "pool.setpoint");
    slow.then().set(DutyFigure.POWER_RATIO, 1, 0.025).lasting(20);
    assertThat(Soundness.of(slow.evidence()).because().toString()).doesNotContain("pool.setpoint");
  }

  @Test
  void aSickCircuitIsNotHealthyForItsSpeed() {
    Soundness sound = Soundness.of(slow().set(DutyFigure.SUPERHEAT, 11, 0.6).evidence());
    assertThat(sound.confidence()).isZero();
    assertThat(sound.because())
        .containsExactly(
            "power is 78 ± 5 % of the nameplate's: part speed, or a compressor that moves too little",
            "but superheat 11.0 K (sound: 2.0 K to 9.0 K)");
  }

  /**
   * Sure only as its COP is known (GUM 6.2.1: the expanded interval holds about 95 %): one that a
   * worn compressor would have given as well proves nothing.
   */
  @Test
  void aCopThatLeavesRoomForAnAilingHeatersProvesNoHealth() {
    AtDuty wide = nearlyWarm(slow());
    assertThat(Soundness.of(wide.set(DutyFigure.COP_RATIO, 1.34, 0.28).evidence()).confidence())
        .isEqualTo(0.5);
    Soundness nothing =
        Soundness.of(
            wide.set(DutyFigure.COP_RATIO, 1.6, 0.7).without(DutyFigure.SUPERHEAT).evidence());
    assertThat(nothing.confidence()).isZero();
    assertThat(nothing.because().get(0))
        .startsWith("COP is 160 ± 140 % of the nameplate's, at part speed")
        .endsWith(", so badly known that the COP of an ailing heater is as possible");
    assertThat(nothing.wouldDecide().get(0)).startsWith("zero the probe pair");
  }

  @Test
  void powerWithinItsDoubtOfThePlatesIsNoPartSpeed() {
    assertThat(
            Soundness.of(
                    AtDuty.sound()
                        .set(DutyFigure.HEAT_RATIO, 0.95, 0.06)
                        .set(DutyFigure.POWER_RATIO, 0.88, 0.045)
                        .set(DutyFigure.COP_RATIO, 1.08, 0.087)
                        .evidence())
                .because()
                .get(0))
        .isEqualTo("heat is 95 ± 12 % of the nameplate's at these conditions");
  }

  @Test
  void powerAboveThePlatesIsNoPartSpeed() {
    // Seen faster in the same run, yet never below its plate.
    AtDuty fast =
        AtDuty.sound()
            .set(DutyFigure.HEAT_RATIO, 1.1, 0.05)
            .set(DutyFigure.POWER_RATIO, 1.12, 0.03)
            .lasting(400)
            .then()
            .set(DutyFigure.POWER_RATIO, 1.3, 0.03);
    assertThat(Soundness.of(fast.evidence()).because().toString()).doesNotContain("part speed");
  }

  /** Half a chance and less that the COP is above 88 %, where low-cop calls it low. */
  @Test
  void aCopLikelierLowThanNotIsAsUnsureAsCanBe() {
    AtDuty wasteful =
        AtDuty.sound().set(DutyFigure.HEAT_RATIO, 0.97, 0.03).set(DutyFigure.COP_RATIO, 0.86, 0.04);
    assertThat(Soundness.of(wasteful.evidence()).confidence()).isEqualTo(0.5);
  }

  /** A quiet setting is no riddle where the whole promised heat comes all the same. */
  @Test
  void theWholeHeatAtLittlePowerIsHealth() {
    AtDuty whole =
        slow()
            .set(DutyFigure.HEAT_RATIO, 1.01, 0.045)
            .set(DutyFigure.POWER_RATIO, 0.83, 0.05)
            .set(DutyFigure.COP_RATIO, 1.22, 0.1);
    Soundness sound = Soundness.of(whole.evidence());
    assertThat(sound.confidence()).isGreaterThan(0.8);
    assertThat(sound.because().get(0)).startsWith("heat is 101 ± 9 %");
    // A heat that may be low leaves it open.
    AtDuty perhaps = whole.set(DutyFigure.HEAT_RATIO, 0.96, 0.12);
    assertThat(Soundness.of(perhaps.evidence()).confidence()).isZero();
  }
}
