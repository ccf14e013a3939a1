package heatwake.analysis.rule;

import heatwake.analysis.air.IcingAir;
import heatwake.analysis.circuit.Circuit;
import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.SaturationSlope;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A coil that ends one stretch of running after another below freezing and far below the air, in
 * air or by so much that no sound coil does. Such a heater never runs steadily: its ice grows until
 * a defrost or a switch ends the stretch, so that this is read off the ends of the stretches.
 *
 * @param ends mean figures at those ends
 * @param times how many there were
 * @param inWarmAir whether the air is too warm for a sound coil to ice at all
 */
public record IcedCoil(Duty ends, int times, boolean inWarmAir) {
  private static final double FREEZING_K = 273.15;

  /** Evaporating below this a coil may be iced, in air that is no warmer than above. */
  private static final double MAY_ICE_K = FREEZING_K - 0.5;

  /** Evaporating below this ice grows on any coil; common practice. */
  private static final double COLD_COIL_K = FREEZING_K - 3;

  /**
   * In colder air: this far below it is more than sound controls let ice add to the 5 to 10 K that
   * a coil needs there, K; ours.
   */
  private static final double FAR_BELOW_AIR_K = 20;

  /** One stretch may be chance; ours. */
  private static final int FEWEST_TIMES = 2;

  /** A start has pulled the coil down and let it come up again after this; ours. */
  private static final long SETTLING_MS = 300_000;

  /** The last of a stretch that is looked at, and the instants that belong to its end already. */
  private static final long LOOKED_AT_MS = 120_000;

  private static final long ENDING_MS = 20_000;

  /**
   * Whether a coil may be iced, so that how far it evaporates below the air says nothing of dirt,
   * air or refrigerant: a sound one grows away from the air until its defrost. Not where coil or
   * air is not known.
   */
  public static boolean mayBe(Duty duty) {
    return duty.of(DutyFigure.EVAPORATING).filter(coil -> coil.value() < MAY_ICE_K).isPresent()
        && duty.of(DutyFigure.AIR)
            .filter(air -> air.value() < IcingAir.NO_SOUND_COIL_ABOVE_K)
            .isPresent();
  }

  /** The iced coil of a run; empty where there is none, or the coil or air is not known. */
  public static Optional<IcedCoil> of(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    Channel air = timeline.preferred(Channel.AIR_IN, Channel.AIR_AMBIENT);
    Optional<double[]> coil = evidence.trace(Trace.Kind.EVAPORATING);
    if (coil.isEmpty() || !timeline.has(air)) {
      return Optional.empty();
    }
    Circuit circuit = Circuit.of(timeline, evidence.recording().rig());
    List<Duty> warm = new ArrayList<>();
    List<Duty> deep = new ArrayList<>();
    for (long[] end : ends(evidence.phases())) {
      double coilK = mean(timeline, coil.get(), end);
      double airK = mean(timeline, timeline.of(air), end);
      boolean far = airK - coilK > FAR_BELOW_AIR_K;
      if (coilK < COLD_COIL_K
          && airK > IcingAir.NO_SOUND_COIL_ABOVE_K
          && (far || !givesItsHeat(evidence, end))) {
        warm.add(at(evidence, circuit, end, coilK, airK));
      }
      if (coilK < COLD_COIL_K && far) {
        deep.add(at(evidence, circuit, end, coilK, airK));
      }
    }
    boolean inWarmAir = warm.size() >= FEWEST_TIMES;
    List<Duty> iced = inWarmAir ? warm : deep;
    return iced.size() < FEWEST_TIMES
        ? Optional.empty()
        : Optional.of(new IcedCoil(Duty.meanOf(iced), iced.size(), inWarmAir));
  }

  /**
   * Whether superheat shows that it is refrigerant, not air, that the coil lacks: no valve holds it
   * on a coil starved that far. Subcooling, slow to settle in short runs, tells only without it.
   */
  public boolean isStarved() {
    return ends.of(DutyFigure.SUPERHEAT)
        .map(superheat -> superheat.value() > Starvation.HIGH_SUPERHEAT_K)
        .orElseGet(() -> Starvation.hasVapourInLiquid(ends));
  }

  /** Whether superheat or subcooling are known, so that a starved coil would have shown. */
  public boolean isTold() {
    return ends.has(DutyFigure.SUPERHEAT) || ends.has(DutyFigure.SUBCOOLING);
  }

  /**
   * Whether the heat is steady and right to the very end of a stretch: over a coil not far below
   * the air that is laid out to run so cold; ice would have taken more.
   */
  private static boolean givesItsHeat(Evidence evidence, long[] end) {
    return evidence.duty().stream()
        .filter(duty -> duty.startMs() <= end[0] && duty.endMs() >= end[1] - ENDING_MS)
        .anyMatch(
            duty ->
                duty.of(DutyFigure.HEAT_RATIO)
                    .filter(ratio -> ratio.value() >= 1 - Duty.CLOSE_TO_PLATE)
                    .isPresent());
  }

  /** The last of each stretch that came to an end, once it had settled. */
  private static List<long[]> ends(List<PhaseSpan> phases) {
    return RunningStretch.of(phases).stream()
        .filter(stretch -> stretch.endedBy().isPresent())
        .filter(
            stretch ->
                stretch.endMs() - ENDING_MS - LOOKED_AT_MS >= stretch.startMs() + SETTLING_MS)
        .map(
            stretch ->
                new long[] {
                  stretch.endMs() - ENDING_MS - LOOKED_AT_MS, stretch.endMs() - ENDING_MS
                })
        .toList();
  }

  private static Duty at(
      Evidence evidence, Circuit circuit, long[] end, double coilK, double airK) {
    Map<DutyFigure, Estimate> figures = new EnumMap<>(DutyFigure.class);
    figures.put(DutyFigure.EVAPORATING, new Estimate(coilK, 0));
    figures.put(DutyFigure.AIR, new Estimate(airK, 0));
    put(
        DutyFigure.SUPERHEAT,
        circuit.superheatK(),
        Channel.PRESSURE_SUCTION,
        end,
        evidence,
        figures);
    put(
        DutyFigure.SUBCOOLING,
        circuit.subcoolingK(),
        Channel.PRESSURE_DISCHARGE,
        end,
        evidence,
        figures);
    return new Duty(end[0], end[1], figures);
  }

  private static void put(
      DutyFigure figure,
      double[] values,
      Channel pressure,
      long[] end,
      Evidence evidence,
      Map<DutyFigure, Estimate> figures) {
    double mean = mean(evidence.timeline(), values, end);
    if (!Double.isNaN(mean)) {
      double pa = evidence.timeline().meanBetween(pressure, end[0], end[1]).orElse(0);
      double standardPa = ProbeUncertainty.of(evidence.recording().rig(), pressure).at(pa);
      figures.put(figure, new Estimate(mean, SaturationSlope.temperatureK(standardPa, pa)));
    }
  }

  private static double mean(Timeline timeline, double[] values, long[] end) {
    return Stretch.mean(values, timeline.firstAtOrAfter(end[0]), timeline.firstAtOrAfter(end[1]));
  }
}
