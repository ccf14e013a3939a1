package heatwake.dashboard.score;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.dashboard.demo.plant.SiteDesign;
import heatwake.dashboard.demo.plant.Tap;
import heatwake.dashboard.demo.plant.Truth;
import heatwake.dashboard.demo.plant.night.Night;
import heatwake.dashboard.demo.plant.sensor.Kit;
import heatwake.dashboard.demo.plant.sensor.SensorSpec;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Water probes and a kWh meter, whose register moves by coarse steps, against what happened. */
class CountedEnergyTest {
  private static final double J_PER_KWH = 3.6e6;
  private static final Set<Tap> CLIPPED =
      EnumSet.of(Tap.WATER_IN, Tap.WATER_OUT, Tap.FLOW_HEATER, Tap.AIR_IN, Tap.ENERGY);

  /** Moments of changes may be off by so much beyond what the register leaves open: ours. */
  private static final double BESIDES_S = 15;

  @ParameterizedTest(name = "register of {0} kWh read every {1} s")
  @CsvSource({"0.001,1", "0.001,60", "0.01,1", "0.01,10", "0.01,60", "0.1,1", "0.1,60"})
  @DisplayName("starts and stops as the register permits, energy within what is stated, zero taken")
  void seesWhatTheRegisterPermits(double stepKWh, double everyS) {
    for (int draw = 0; draw < 4; draw++) {
      SimulatedRecording played = SimulatedRecording.of(night(draw, stepKWh, everyS));
      Findings findings = Analysis.of(played.recording());
      Truth truth = played.truth();
      String why = "draw " + draw + ": " + findings.phases();

      List<Double> starts = startsS(played.recording(), findings);
      assertThat(starts).as(why).hasSameSizeAs(truth.startsS());
      for (int k = 0; k < starts.size(); k++) {
        double trueS = truth.startsS().get(k);
        double openS = stepKWh * J_PER_KWH / truth.meanPowerW(trueS, trueS + 300) + everyS;
        assertThat(Math.abs(starts.get(k) - trueS)).as(why).isLessThan(openS + BESIDES_S);
      }
      List<Double> stops = stopsS(played.recording(), findings);
      assertThat(stops).as(why).hasSameSizeAs(truth.stopsS());
      for (int k = 0; k < stops.size(); k++) {
        double trueS = truth.stopsS().get(k);
        double openS = stepKWh * J_PER_KWH / truth.meanPowerW(trueS - 300, trueS) + everyS;
        assertThat(Math.abs(stops.get(k) - trueS)).as(why).isLessThan(openS + BESIDES_S);
      }
      // One run in twenty may lie beyond one expanded uncertainty; three standard ones are asked.
      assertThat(findings.heat().electricJ())
          .hasValueSatisfying(
              energy ->
                  assertThat(Math.abs(energy.value() - truth.electricJ()))
                      .as(why)
                      .isLessThan(3 * energy.standard()));
      assertThat(findings.steady()).as(why).isNotEmpty();
      assertThat(findings.flags()).as(why).isEmpty();
      if (stepKWh < 0.1) {
        assertThat(findings.zero()).as(why).isPresent();
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"reset", "used", "higher", "decimal end", "binary end", "glitch"})
  @DisplayName("a meter that is reset, replaced or runs over its end makes no false start")
  void survivesTheMeter(String what) {
    for (double hour : new double[] {0.15, 3, 7.01}) {
      SimulatedRecording played = SimulatedRecording.of(night(2, 0.01, 10));
      Recording recording = played.recording();
      long atMs = recording.startMs() + Math.round(hour * 3_600_000);
      Findings findings = Analysis.of(with(recording, atMs, what));
      String why = what + " at " + hour + " h: " + findings.phases();

      List<Double> starts = startsS(recording, findings);
      assertThat(starts).as(why).hasSameSizeAs(played.truth().startsS());
      assertThat(findings.flags()).as(why).isEmpty();
      // What was taken between the last reading of one meter and the first of the next is lost.
      double lostJ = 0.05 * J_PER_KWH;
      assertThat(findings.heat().electricJ())
          .hasValueSatisfying(
              energy ->
                  assertThat(Math.abs(energy.value() - played.truth().electricJ()))
                      .as(why)
                      .isLessThan(3 * energy.standard() + lostJ));
    }
  }

  @ParameterizedTest(name = "silent for 40 min from {0} h")
  @ValueSource(doubles = {0.1, 2, 4.9, 6, 10.9})
  @DisplayName("a meter that falls silent makes no false start")
  void survivesSilence(double hour) {
    SimulatedRecording played = SimulatedRecording.of(night(2, 0.01, 10));
    Recording recording = played.recording();
    long fromMs = recording.startMs() + Math.round(hour * 3_600_000);
    Series tidy = recording.of(Channel.ENERGY).orElseThrow();
    Series.Builder kept = Series.of(Channel.ENERGY);
    for (int r = 0; r < tidy.size(); r++) {
      if (tidy.timeMs(r) < fromMs || tidy.timeMs(r) > fromMs + 2_400_000) {
        kept.add(tidy.timeMs(r), tidy.value(r));
      }
    }
    Findings findings = Analysis.of(withEnergy(recording, kept.build()));

    assertThat(startsS(recording, findings))
        .as(() -> findings.phases().toString())
        .hasSameSizeAs(played.truth().startsS());
  }

  /** A mild night: draw 0 and 2 without, 1 and 3 with a pause of the pump. */
  private static Case night(int draw, double stepKWh, double everyS) {
    Draft draft = new Draft("counted", draw < 2 ? Stock.seen() : Stock.unseen(), 8_100 + draw);
    if (draw % 2 == 1) {
      draft
          .startC(27.2)
          .pump(new SiteDesign.Spell(120, 5 * 3600), new SiteDesign.Spell(7 * 3600, 1e9));
    } else {
      draft.startC(27.5).volumeFactor(0.5);
    }
    Case one = draft.hours(12).build();
    List<SensorSpec> probes = new ArrayList<>();
    for (SensorSpec probe : Kit.good(5).clip(CLIPPED)) {
      probes.add(
          probe.tap() == Tap.ENERGY
              ? new SensorSpec(Tap.ENERGY, 0.01, true, everyS, 0.1, 0, stepKWh, 0, 0)
              : probe);
    }
    Night night = one.night();
    return new Case(
        one.name(),
        new Night(
            night.site(),
            night.ailments(),
            probes,
            night.troubles(),
            night.clockSteps(),
            night.builder(),
            night.startMs(),
            night.seed()),
        one.nameplate(),
        one.truth());
  }

  /** The recording with something done to its meter at a moment. */
  private static Recording with(Recording recording, long atMs, String what) {
    Series tidy = recording.of(Channel.ENERGY).orElseThrow();
    double thenKWh = tidy.value(tidy.firstAtOrAfter(atMs)) / J_PER_KWH;
    int next = tidy.firstAtOrAfter(atMs);
    while (tidy.value(next) / J_PER_KWH < thenKWh + 0.005) {
      next++;
    }
    double nextKWh = tidy.value(next) / J_PER_KWH;
    Series.Builder changed = Series.of(Channel.ENERGY);
    for (int r = 0; r < tidy.size(); r++) {
      boolean after = tidy.timeMs(r) >= atMs;
      double kWh = tidy.value(r) / J_PER_KWH;
      DoubleUnaryOperator meter =
          switch (what) {
            case "reset" -> x -> after ? x - thenKWh : x;
            case "used" -> x -> after ? x - thenKWh + 3.71 : x;
            case "higher" -> x -> after ? x + 6000 : x;
            case "decimal end" -> x -> runsOverKWh(x, nextKWh, 10_000);
            case "binary end" -> x -> runsOverKWh(x, nextKWh, 655.36);
            default -> x -> x;
          };
      boolean misread = what.equals("glitch") && r == tidy.firstAtOrAfter(atMs);
      double shown = misread ? 99_999.99 : meter.applyAsDouble(kWh);
      changed.add(tidy.timeMs(r), Math.rint(shown * 100) / 100 * J_PER_KWH);
    }
    return withEnergy(recording, changed.build());
  }

  /** What a register shows that goes from its end to zero where the meter reaches a total. */
  private static double runsOverKWh(double totalKWh, double atKWh, double endKWh) {
    double shown = Math.rint((totalKWh - atKWh) * 100) / 100;
    return shown < 0 ? shown + endKWh : shown;
  }

  private static Recording withEnergy(Recording recording, Series energy) {
    Map<Channel, Series> series = new EnumMap<>(recording.series());
    series.put(Channel.ENERGY, energy);
    return recording.with(series);
  }

  private static List<Double> startsS(Recording recording, Findings findings) {
    return findings.cycles().stream()
        .map(one -> (one.cycle().startMs() - recording.startMs()) / 1e3)
        .toList();
  }

  private static List<Double> stopsS(Recording recording, Findings findings) {
    return findings.cycles().stream()
        .map(one -> one.cycle())
        .flatMap(cycle -> stop(cycle).stream())
        .map(stopMs -> (stopMs - recording.startMs()) / 1e3)
        .toList();
  }

  private static List<Long> stop(Cycle cycle) {
    return cycle.stopMs().isPresent() ? List.of(cycle.stopMs().getAsLong()) : List.of();
  }
}
