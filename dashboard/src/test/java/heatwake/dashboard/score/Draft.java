package heatwake.dashboard.score;

import heatwake.dashboard.demo.plant.SiteDesign;
import heatwake.dashboard.demo.plant.air.Climate;
import heatwake.dashboard.demo.plant.fault.Ailment;
import heatwake.dashboard.demo.plant.machine.HeaterDesign;
import heatwake.dashboard.demo.plant.night.Night;
import heatwake.dashboard.demo.plant.sensor.Kit;
import heatwake.dashboard.demo.plant.sensor.ProbeTrouble;
import heatwake.dashboard.demo.plant.water.Basin;
import heatwake.dashboard.demo.plant.water.Circuit;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;

/** A run in the making: an ordinary healthy night unless told otherwise. */
final class Draft {
  private static final long EVENING_MS = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();
  private static final double SHARE = 0.6;

  private final String name;
  private final Stock.Piece piece;
  private final long seed;
  private final List<Ailment> ailments = new ArrayList<>();
  private final List<ProbeTrouble> troubles = new ArrayList<>();
  private final List<Night.ClockStep> clockSteps = new ArrayList<>();
  private Climate climate = Climate.of(20, 4, 0.7, 0.6, 0.5);
  private double hours = 14;
  private double startC = 26.7;
  private double setpointC = 28;
  private double volumeFactor = 1;
  private double depthM = 1.6;
  private boolean covered = true;
  private List<SiteDesign.Spell> pumpSpells = List.of(new SiteDesign.Spell(120, 1e9));
  private double heaterFromS = 840;
  private double meteredPumpW;
  private ProbeSet probes = ProbeSet.FULL;
  private Kit kit = Kit.good(5);
  private Case.Truth truth = Case.Truth.HEALTHY;

  Draft(String name, Stock stock, long seed) {
    this.name = name;
    this.seed = seed;
    this.piece = stock.draw(new SplittableRandom(seed));
  }

  /** A heater that takes heat from the water to melt its ice, or not. */
  boolean thawsByReversedCycle() {
    return piece.design().sequence().defrost() == HeaterDesign.Defrost.REVERSED_CYCLE;
  }

  Draft climate(Climate value) {
    climate = value;
    return this;
  }

  Draft hours(double value) {
    hours = value;
    return this;
  }

  Draft startC(double value) {
    startC = value;
    return this;
  }

  Draft volumeFactor(double value) {
    volumeFactor = value;
    return this;
  }

  Draft uncovered() {
    covered = false;
    return this;
  }

  Draft shallow() {
    depthM = 1.2;
    return this;
  }

  Draft pump(SiteDesign.Spell... spells) {
    pumpSpells = List.of(spells);
    return this;
  }

  /** The pool pump is wired behind the heater's meter. */
  Draft pumpOnMeter() {
    // 1.1 kW for 15 m3/h: common practice; smaller heaters come with smaller pumps.
    meteredPumpW = Math.min(1500, 0.1 * piece.design().ratedHeatW());
    return this;
  }

  /** The heater's own switch is turned on, s from the start of the run. */
  Draft heaterOnAt(double seconds) {
    heaterFromS = seconds;
    return this;
  }

  Draft probes(ProbeSet value) {
    probes = value;
    return this;
  }

  Draft kit(Kit value) {
    kit = value;
    return this;
  }

  Draft ill(Ailment ailment) {
    ailments.add(ailment);
    return this;
  }

  Draft trouble(ProbeTrouble trouble) {
    troubles.add(trouble);
    return this;
  }

  Draft clockStep(double atS, long byMs) {
    clockSteps.add(new Night.ClockStep(atS, byMs));
    return this;
  }

  Draft truth(Case.Truth value) {
    truth = value;
    return this;
  }

  Case build() {
    double heatW = piece.design().ratedHeatW();
    double volume = volumeFactor * heatW / 260;
    SiteDesign site =
        new SiteDesign(
            climate,
            50,
            new Basin(volume, volume / depthM, covered, startC),
            Circuit.of(piece.design().waterM3PerS() / SHARE, SHARE),
            piece.design(),
            setpointC,
            pumpSpells,
            List.of(new SiteDesign.Spell(heaterFromS, 1e9)),
            18,
            hours * 3600,
            meteredPumpW);
    Night night =
        new Night(
            site,
            ailments,
            kit.clip(probes.taps()),
            troubles,
            clockSteps,
            piece.builder(),
            EVENING_MS,
            seed * 31 + 7);
    String label =
        String.format(
            Locale.ROOT,
            "%s [%s %.0f kW%s, %s, %.0f s]",
            name,
            piece.design().fluid().designation(),
            heatW / 1e3,
            piece.design().compressor().inverter() ? " inverter" : "",
            probes.name().toLowerCase(Locale.ROOT).replace('_', ' '),
            kit.intervalS());
    return new Case(label, night, piece.plate(), truth);
  }
}
