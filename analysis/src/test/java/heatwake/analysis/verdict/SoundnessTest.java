package heatwake.analysis.verdict;

import static heatwake.analysis.verdict.AtPartSpeed.nearlyWarm;
import static heatwake.analysis.verdict.AtPartSpeed.slow;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.scenario.AtDuty;
import org.junit.jupiter.api.Test;

/**
 * What may speak for a heater's health. Bands are common practice: superheat 2 to 9 K, subcooling 2
 * to 7 K, coils 8 to 17 K below the air.
 */
class SoundnessTest {
  @Test
  void gaugesAtEaseSpeakForItFarLessSurely() {
    AtDuty wide = nearlyWarm(slow()).set(DutyFigure.COP_RATIO, 1.6, 0.7);
    Soundness gauged = Soundness.of(wide.evidence());
    assertThat(gauged.confidence()).isEqualTo(0.45);
    assertThat(gauged.because()).anyMatch(text -> text.startsWith("superheat 6.0 K"));
    assertThat(Soundness.of(wide.set(DutyFigure.SUPERHEAT, 8.5, 1).evidence()).confidence())
        .isZero();
    wide.set(DutyFigure.SUPERHEAT, 6, 0.4);
    assertThat(Soundness.of(wide.set(DutyFigure.COP_RATIO, 0.8, 0.22).evidence()).confidence())
        .isZero();
  }

  /** Sound pool heaters condense 4 to 11 K above the leaving water (common practice). */
  @Test
  void aHeadBeyondWhatSoundHeatersShowIsNotCalledHealth() {
    AtDuty high =
        AtDuty.sound()
            .set(DutyFigure.CONDENSER_APPROACH, 12.9, 0.3)
            .set(DutyFigure.LOAD, 1, 0.02)
            .set(DutyFigure.HEAT_RATIO, 0.96, 0.065)
            .set(DutyFigure.COP_RATIO, 0.91, 0.1);
    assertThat(Soundness.of(high.evidence()).confidence()).isZero();
    // Laid out so: it costs no power. Within its doubt of the band: it may be the gauge's.
    assertThat(Soundness.of(high.set(DutyFigure.COP_RATIO, 0.97, 0.1).evidence()).confidence())
        .isEqualTo(0.5);
    high.set(DutyFigure.COP_RATIO, 0.91, 0.1);
    assertThat(
            Soundness.of(high.set(DutyFigure.CONDENSER_APPROACH, 12.9, 0.7).evidence())
                .confidence())
        .isEqualTo(0.5);
  }

  @Test
  void aFigureAboveItsBandIsNotCalledHighInIt() {
    AtDuty high =
        AtDuty.sound()
            .without(DutyFigure.HEAT_RATIO, DutyFigure.COP_RATIO)
            .set(DutyFigure.CONDENSER_APPROACH, 12, 0.8)
            .set(DutyFigure.LOAD, 1, 0.06);
    assertThat(Soundness.of(high.evidence()).because())
        .contains(
            "condensing above leaving water, at full load 12.0 K (sound: 2.5 K to 11.0 K), above"
                + " that band though not beyond doubt");
  }

  @Test
  void heatThatLooksRightDoesNotOutweighTwoFiguresOutOfTheirBands() {
    AtDuty odd = AtDuty.sound().set(DutyFigure.SUPERHEAT, 16.1, 2.1);
    assertThat(Soundness.of(odd.evidence()).confidence()).isEqualTo(0.5);
    Soundness both = Soundness.of(odd.set(DutyFigure.SUBCOOLING, 0.2, 1.2).evidence());
    assertThat(both.confidence()).isZero();
    assertThat(both.because().toString()).contains("superheat 16.1 K", "subcooling 0.2 K");
  }

  /** Scale raises the head, and the head costs power: two figures that agree are no health. */
  @Test
  void aHighHeadThatCostsPowerIsNotTheHeatersOwnWay() {
    AtDuty high = AtDuty.sound().set(DutyFigure.CONDENSER_APPROACH, 13.1, 0.4);
    assertThat(Soundness.of(high.evidence()).confidence()).isEqualTo(0.5);
    Soundness wasteful = Soundness.of(high.set(DutyFigure.COP_RATIO, 0.83, 0.09).evidence());
    assertThat(wasteful.confidence()).isZero();
    assertThat(wasteful.because().toString()).contains("COP is 83 ± 18 %");
  }

  /** Overcharge, a choked line and air all back liquid up in the condenser (common practice). */
  @Test
  void moreLiquidThanUsualNamesWhatTellsItsCausesApart() {
    AtDuty full = AtDuty.sound().set(DutyFigure.SUBCOOLING, 12.6, 0.6);
    assertThat(Soundness.of(full.evidence()).wouldDecide())
        .hasSize(2)
        .last()
        .asString()
        .contains("liquid line", "standing pressure", "weighs the charge");
  }

  /**
   * Vapour is superheated only where no liquid is left: a coil without superheat is full, and what
   * stands in it is missing in the condenser (physics; a fixed orifice does so in cool air: Rossi
   * and Braun, HVAC&R Research 3(1), 1997, is on such a unit).
   */
  @Test
  void aFloodedCoilIsOneFigureAndNotShortOfRefrigerant() {
    AtDuty flooded =
        AtDuty.sound().set(DutyFigure.SUPERHEAT, 0.1, 0.5).set(DutyFigure.SUBCOOLING, 0.8, 0.5);
    Soundness sound = Soundness.of(flooded.evidence());
    assertThat(sound.confidence()).isEqualTo(0.5);
    assertThat(sound.because().toString()).contains("superheat 0.1 K", "subcooling 0.8 K");
    assertThat(sound.wouldDecide())
        .hasSize(2)
        .last()
        .asString()
        .contains("fixed orifice", "bulb")
        .doesNotContain("lack refrigerant");
    assertThat(
            Soundness.of(flooded.without(DutyFigure.SUPERHEAT).evidence()).wouldDecide().toString())
        .contains("lack refrigerant");
  }

  @Test
  void aLittleLessHeatAndACoilInTheUpperHalfAsksToLookAtIt() {
    AtDuty weak =
        AtDuty.sound()
            .set(DutyFigure.HEAT_RATIO, 0.88, 0.04)
            .set(DutyFigure.COP_RATIO, 0.9, 0.05)
            .set(DutyFigure.EVAPORATOR_APPROACH, 22.7, 1);
    Soundness coil = Soundness.of(weak.set(DutyFigure.STANDARD_APPROACH, 16.3, 1.3).evidence());
    assertThat(coil.confidence()).isZero();
    assertThat(coil.because())
        .contains(
            "the coil evaporates 22.7 K below the entering air, 16.3 K at full load in humid air,"
                + " where coils are laid out for 8 to 17 K; it gets 0.085 kg/s of air for each kW of"
                + " rated heat, where 0.07 to 0.11 is usual");
    assertThat(coil.wouldDecide().get(0)).startsWith("look through the air coil");
    assertThat(Soundness.of(weak.set(DutyFigure.STANDARD_APPROACH, 12, 1.3).evidence()).because())
        .noneMatch(text -> text.contains("coil"));
  }

  /** The air is worked out from entering and leaving air and the humidity. */
  @Test
  void asksToClipForTheAirOnlyWhatIsNotClippedYet() {
    AtDuty weak =
        AtDuty.sound()
            .set(DutyFigure.HEAT_RATIO, 0.88, 0.04)
            .set(DutyFigure.COP_RATIO, 0.9, 0.05)
            .set(DutyFigure.EVAPORATOR_APPROACH, 22.7, 1)
            .set(DutyFigure.STANDARD_APPROACH, 16.3, 1.3);
    assertThat(Soundness.of(weak.evidence()).wouldDecide().toString()).doesNotContain("clip");
    weak.without(DutyFigure.AIR_FLOW, DutyFigure.HUMIDITY);
    assertThat(Soundness.of(weak.evidence()).wouldDecide().toString())
        .contains("clip humidity-in beside air-in and air-out, to know how much air it gets");
    weak.without(DutyFigure.AIR_DROP);
    assertThat(Soundness.of(weak.evidence()).wouldDecide().toString())
        .contains("clip air-out and humidity-in beside air-in, to know");
    weak.set(DutyFigure.HUMIDITY, 0.7, 0.03);
    assertThat(Soundness.of(weak.evidence()).wouldDecide().toString())
        .contains("clip air-out beside air-in and humidity-in, to know");
  }

  /**
   * A sound coil in air of 10 Cel evaporates below freezing and ices between defrosts, 3 to 6 K
   * further below the air each time (common practice; see frosting): its approach is no dirt.
   */
  @Test
  void aCoilThatMayBeIcedIsNotSuspect() {
    AtDuty cold =
        AtDuty.sound()
            .set(DutyFigure.HEAT_RATIO, 0.9, 0.05)
            .set(DutyFigure.COP_RATIO, 0.92, 0.06)
            .set(DutyFigure.AIR, 273.15 + 10, 0.1)
            .set(DutyFigure.EVAPORATING, 273.15 - 8, 0.4)
            .set(DutyFigure.EVAPORATOR_APPROACH, 18, 0.5)
            .set(DutyFigure.STANDARD_APPROACH, 26, 2);
    Soundness iced = Soundness.of(cold.evidence());
    assertThat(iced.because().toString()).doesNotContain("coil", "entering air");
    assertThat(iced.wouldDecide().toString()).doesNotContain("air coil");
    // In air of 20 Cel a sound coil does not ice.
    assertThat(
            Soundness.of(
                    cold.set(DutyFigure.AIR, 273.15 + 20, 0.1)
                        .set(DutyFigure.EVAPORATING, 273.15 - 1, 0.4)
                        .evidence())
                .because()
                .toString())
        .contains("the coil evaporates 18.0 K below the entering air");
  }

  /**
   * Of heat 77 +- 27 % (k = 2) one in three is above 90 % (table of the normal distribution: 0.96
   * standard deviations), of 86 +- 12 % one in four (0.67): neither is a proof of health.
   */
  @Test
  void heatThatIsLikelierLowProvesNoHealthHoweverUncertain() {
    for (double[] low : new double[][] {{0.77, 0.135}, {0.86, 0.06}, {0.6, 0.3}}) {
      Soundness sound =
          Soundness.of(
              AtDuty.sound()
                  .set(DutyFigure.HEAT_RATIO, low[0], low[1])
                  .set(DutyFigure.COP_RATIO, low[0] + 0.06, low[1] + 0.015)
                  .evidence());
      assertThat(sound.confidence()).isZero();
      assertThat(sound.because().get(0))
          .endsWith("low, but too uncertain to tell a weak heater from a sound one");
    }
  }

  /** Table of the normal distribution: 0.5 deviations above the limit 0.6915, two 0.9772. */
  @Test
  void healthIsNoSurerThanTheUncertaintyOfTheHeatAllows() {
    assertThat(soundAt(0.96, 0.12)).isCloseTo(0.69, within(0.005));
    assertThat(soundAt(0.98, 0.04)).isCloseTo(0.91, within(1e-9));
    assertThat(soundAt(1.0, 0.03)).isCloseTo(0.93, within(1e-9));
    double surer = 1;
    for (double standard = 0.01; standard < 0.4; standard += 0.01) {
      double sound = soundAt(0.95, standard);
      assertThat(sound).isLessThanOrEqualTo(surer);
      surer = sound;
    }
  }

  private static double soundAt(double ratio, double standard) {
    return Soundness.of(
            AtDuty.sound()
                .set(DutyFigure.HEAT_RATIO, ratio, standard)
                .set(DutyFigure.COP_RATIO, ratio, standard + 0.01)
                .evidence())
        .confidence();
  }

  /** Only what is not done yet, and of the part that brings the doubt. */
  @Test
  void whatMakesTheHeatSurerIsWhatItLacks() {
    AtDuty vague = AtDuty.sound().set(DutyFigure.HEAT_RATIO, 0.8, 0.14);
    assertThat(Soundness.of(vague.set(DutyFigure.HEAT, 12_800, 2_200).evidence()).wouldDecide())
        .containsExactly(
            "zero the probe pair: let the water circulate for 10 min with the compressor at rest",
            "clip flow-heater");
    assertThat(
            Soundness.of(
                    vague
                        .set(DutyFigure.HEAT, 12_800, 300)
                        .set(DutyFigure.EXPECTED_HEAT, 16_000, 2_700)
                        .evidence())
                .wouldDecide())
        .singleElement()
        .asString()
        .startsWith("clip humidity-in");
  }

  @Test
  void muchHeatWithinItsDoubtAccusesNoMeter() {
    AtDuty rich = AtDuty.sound().set(DutyFigure.COP_RATIO, 1.3, 0.2);
    Soundness vague = Soundness.of(rich.set(DutyFigure.HEAT_RATIO, 1.4, 0.15).evidence());
    assertThat(vague.confidence()).isEqualTo(0.5);
    assertThat(vague.because().get(0)).endsWith("more than it promises but not beyond doubt");
    assertThat(Soundness.of(rich.set(DutyFigure.HEAT_RATIO, 1.4, 0.13).evidence()).confidence())
        .isZero();
  }

  /**
   * Right heat for a third more power than the nameplate's: a motor, a high head or a second load;
   * none of it is health. Plates are tolerated to be 5 % off (common practice).
   */
  @Test
  void powerBeyondDoubtAboveTheNameplatesIsNoHealth() {
    AtDuty strained =
        AtDuty.sound()
            .without(DutyFigure.UNEXPLAINED_POWER_RATIO)
            .set(DutyFigure.HEAT_RATIO, 1.06, 0.115)
            .set(DutyFigure.POWER_RATIO, 1.31, 0.03)
            .set(DutyFigure.COP_RATIO, 0.8, 0.09);
    Soundness sound = Soundness.of(strained.evidence());
    assertThat(sound.confidence()).isZero();
    assertThat(sound.because().get(1))
        .isEqualTo("but power is 131 ± 6 % of the nameplate's, more than it explains");
    assertThat(sound.wouldDecide().get(0)).startsWith("see what else runs on the heater's meter");
  }

  /** An inverter above its rated speed takes more power and gives more heat for it. */
  @Test
  void powerThatGivesItsHeatIsHealth() {
    AtDuty fast =
        AtDuty.sound()
            .set(DutyFigure.HEAT_RATIO, 1.15, 0.04)
            .set(DutyFigure.POWER_RATIO, 1.22, 0.03)
            .set(DutyFigure.UNEXPLAINED_POWER_RATIO, 1.2, 0.03)
            .set(DutyFigure.COP_RATIO, 0.94, 0.045);
    assertThat(Soundness.of(fast.evidence()).confidence()).isGreaterThan(0.5);
  }

  /** A coil at the edge of its band by an assumed humidity is no proof of health. */
  @Test
  void theCircuitAloneProvesHealthOnlyWellWithinItsBands() {
    AtDuty coil =
        AtDuty.sound()
            .without(DutyFigure.HEAT, DutyFigure.HEAT_RATIO, DutyFigure.COP_RATIO)
            .set(DutyFigure.STANDARD_APPROACH, 16.8, 0.9);
    assertThat(Soundness.of(coil.evidence()).confidence()).isZero();
    assertThat(
            Soundness.of(coil.set(DutyFigure.STANDARD_APPROACH, 13, 0.9).evidence()).confidence())
        .isPositive();
  }

  /** Sound condensers stay under 11 K at full load, and hardly any is laid out for ten. */
  @Test
  void aHighHeadWithinItsBandIsSaidUnlessTheCopIsAsPromised() {
    AtDuty high =
        AtDuty.sound()
            .set(DutyFigure.LOAD, 1, 0.02)
            .set(DutyFigure.CONDENSER_APPROACH, 10, 0.4)
            .set(DutyFigure.COP_RATIO, 0.91, 0.05);
    Soundness said = Soundness.of(high.evidence());
    assertThat(said.confidence()).isEqualTo(0.6);
    assertThat(said.because().toString()).contains("10.0 K (sound: 2.5 K to 11.0 K), high in that");
    assertThat(said.wouldDecide().get(0)).contains("a scaled condenser");
    Soundness own = Soundness.of(high.set(DutyFigure.COP_RATIO, 0.99, 0.05).evidence());
    assertThat(own.confidence()).isGreaterThan(0.8);
    assertThat(own.because().toString()).doesNotContain("high in that band");
    Soundness usual =
        Soundness.of(
            high.set(DutyFigure.CONDENSER_APPROACH, 5, 0.4)
                .set(DutyFigure.COP_RATIO, 0.91, 0.05)
                .evidence());
    assertThat(usual.because().toString()).doesNotContain("high in that band");
  }

  @Test
  void withoutHeatAHighHeadIsSaidToo() {
    AtDuty gauges =
        AtDuty.sound()
            .set(DutyFigure.CONDENSER_APPROACH, 9.5, 0.4)
            .only(DutyFigure.CONDENSER_APPROACH, DutyFigure.CONDENSING, DutyFigure.LOAD);
    Soundness open = Soundness.of(gauges.evidence());
    assertThat(open.confidence()).isZero();
    assertThat(open.because().toString()).contains("high in that band");
  }

  /** Sound condensers keep 2 to 7 K of subcooling; 15 K are more than any heater's own way. */
  @Test
  void aFigureFarOutOfItsBandIsNotHealth() {
    AtDuty much = AtDuty.sound().without(DutyFigure.SUBCOOLING_SHARE);
    Soundness some = Soundness.of(much.set(DutyFigure.SUBCOOLING, 9.5, 0.5).evidence());
    assertThat(some.confidence()).isEqualTo(0.5);
    Soundness far = Soundness.of(much.set(DutyFigure.SUBCOOLING, 15, 0.5).evidence());
    assertThat(far.confidence()).isZero();
    assertThat(far.because().toString()).contains("but subcooling 15.0 K");
  }
}
