package heatwake.analysis.expected;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import heatwake.analysis.Analysis;
import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.DutyReading;
import heatwake.analysis.duty.MeterLoad;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import heatwake.analysis.series.Recording;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class EnteringAirTest {
  private final Rig rig = Rigs.typical();

  private EnteringAir of(Timeline timeline) {
    return EnteringAir.of(timeline, rig, 0, timeline.size()).orElseThrow();
  }

  private Timeline reading(double inletCel, double outdoorCel) {
    return Timeline.of(
        RunBuilder.run()
            .only(Channel.AIR_IN, Channel.AIR_AMBIENT)
            .set(Channel.AIR_IN, inletCel)
            .set(Channel.AIR_AMBIENT, outdoorCel)
            .circulating(20)
            .recording());
  }

  /** A coil takes heat from its air: 5 K more than outdoors is sun or a wall, on one of the two. */
  @Test
  void anInletWarmerThanTheOutdoorAirMayBeEitherOfThem() {
    EnteringAir air = of(reading(27, 22));
    assertThat(air.warmerByK()).isCloseTo(5, within(0.01));
    assertThat(air.temperatureK().value()).isCloseTo(273.15 + 24.5, within(0.01));
    // A rectangular distribution of half width 2.5 K: GUM 4.3.7.
    assertThat(air.temperatureK().standard()).isBetween(2.5 / Math.sqrt(3), 1.6);
    assertThat(EnteringAir.missing(reading(27, 22), rig, List.of(new Stretch(0, 100))))
        .singleElement()
        .asString()
        .contains("air-in reads up to 5.0 K above air-ambient");
  }

  @Test
  void anInletColderThanTheOutdoorAirIsTakenAsItReads() {
    EnteringAir air = of(reading(18, 22));
    assertThat(air.temperatureK().value()).isCloseTo(273.15 + 18, within(0.01));
    assertThat(air.warmerByK()).isZero();
    assertThat(EnteringAir.missing(reading(18, 22), rig, List.of(new Stretch(0, 100)))).isEmpty();
  }

  @Test
  void aKelvinBetweenTwoProbesIsNothing() {
    assertThat(of(reading(23, 22)).temperatureK().value()).isCloseTo(273.15 + 23, within(0.01));
  }

  /** What errs in the air at the coil must not count twice: in the approach and in the cooling. */
  @Test
  void aClipInTheSunWidensTheApproachAndTellsNothingOfTheAirsCooling() {
    Duty shaded = dutyOf(RunBuilder.run());
    Duty sunny = dutyOf(RunBuilder.run().set(Channel.AIR_IN, 30));
    assertThat(shaded.has(DutyFigure.AIR_DROP)).isTrue();
    assertThat(sunny.has(DutyFigure.AIR_DROP)).isFalse();
    Estimate usual = shaded.of(DutyFigure.EVAPORATOR_APPROACH).orElseThrow();
    Estimate doubted = sunny.of(DutyFigure.EVAPORATOR_APPROACH).orElseThrow();
    assertThat(doubted.value() - usual.value()).isCloseTo(3, within(0.1));
    assertThat(doubted.standard()).isGreaterThan(usual.standard() + 1);
  }

  private static Duty dutyOf(RunBuilder run) {
    Recording recording = run.circulating(10).heating(90).recording();
    Timeline timeline = Timeline.of(recording);
    Phases phases = Phases.of(timeline, recording);
    List<SteadySpan> spans = Analysis.of(recording).steady();
    return DutyReading.of(
            recording.rig(),
            timeline,
            phases.spans(),
            spans,
            Optional.empty(),
            MeterLoad.of(timeline, PhaseGrid.of(timeline, phases.spans())))
        .get(0);
  }
}
