package heatwake.analysis.scenario;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.duty.MeterLoad;
import heatwake.analysis.finding.FlowKnowledge;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.series.Recording;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Evidence that consists of steady running with given figures only, for tests of the rules that
 * reason from those. Starts with a sound heater at 27 Cel air and 26 Cel water.
 *
 * <p>The sound figures are those a technician would call normal (common practice), not the output
 * of any model.
 */
public final class AtDuty {
  private static final long START_MS = 1_935_000_000_000L;

  private final Rig rig;
  private final Map<DutyFigure, Estimate> figures = new EnumMap<>(DutyFigure.class);
  private final List<Duty> past = new ArrayList<>();
  private HeatFigures heat = HeatFigures.NONE;
  private double minutes = 60;
  private long fromMs = START_MS;
  private Set<Channel> loadShownBy = Set.of();

  private AtDuty(Rig rig) {
    this.rig = rig;
    set(DutyFigure.HEAT, 15_800, 400);
    set(DutyFigure.EXPECTED_HEAT, 16_000, 320);
    set(DutyFigure.POWER, 2_700, 27);
    set(DutyFigure.RISE, 2.4, 0.04);
    set(DutyFigure.FLOW, 150e-3 / 60, 2e-3 / 60);
    set(DutyFigure.WATER_IN, 273.15 + 26, 0.1);
    set(DutyFigure.AIR, 273.15 + 27, 0.1);
    set(DutyFigure.HUMIDITY, 0.7, 0.03);
    set(DutyFigure.HEAT_RATIO, 0.99, 0.035);
    set(DutyFigure.POWER_RATIO, 1.0, 0.025);
    set(DutyFigure.COP_RATIO, 0.99, 0.04);
    set(DutyFigure.UNEXPLAINED_POWER_RATIO, 0.85, 0.025);
    set(DutyFigure.LOAD, 0.96, 0.025);
    set(DutyFigure.CONDENSING, 273.15 + 36, 0.3);
    set(DutyFigure.EVAPORATING, 273.15 + 16, 0.4);
    set(DutyFigure.CONDENSER_APPROACH, 7.6, 0.3);
    set(DutyFigure.EVAPORATOR_APPROACH, 11, 0.4);
    set(DutyFigure.STANDARD_APPROACH, 12, 0.6);
    set(DutyFigure.AIR_FLOW, 0.085e-3, 0.009e-3);
    set(DutyFigure.STANDING_EXCESS, -1, 0.8);
    set(DutyFigure.SUPERHEAT, 6, 0.4);
    set(DutyFigure.SUBCOOLING, 5, 0.4);
    set(DutyFigure.DISCHARGE_SUPERHEAT, 28, 0.4);
    set(DutyFigure.AIR_DROP, 5.5, 0.15);
  }

  /** A sound heater on the typical rig. */
  public static AtDuty sound() {
    return new AtDuty(Rigs.typical());
  }

  public static AtDuty sound(Rig rig) {
    return new AtDuty(rig);
  }

  public AtDuty set(DutyFigure figure, double value, double standard) {
    figures.put(figure, new Estimate(value, standard));
    return this;
  }

  public AtDuty without(DutyFigure... unknown) {
    List.of(unknown).forEach(figures::remove);
    return this;
  }

  /** How well the flow is known that the heat rests on. */
  public AtDuty flow(FlowKnowledge known) {
    heat =
        new HeatFigures(
            Optional.empty(),
            1,
            Optional.empty(),
            1,
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.of(known));
    return this;
  }

  /** Keeps only these figures. */
  public AtDuty only(DutyFigure... known) {
    figures.keySet().retainAll(List.of(known));
    return this;
  }

  /** The heater was seen at rest with water moving, and nothing else drew power from its meter. */
  public AtDuty aloneOnItsMeter() {
    loadShownBy = Set.of(Channel.POWER, Channel.CURRENT);
    return this;
  }

  /** Length of the stretch that is being described. */
  public AtDuty lasting(double stretchMinutes) {
    minutes = stretchMinutes;
    return this;
  }

  /** Closes the stretch; what follows describes the next one. */
  public AtDuty then() {
    past.add(duty());
    fromMs = duty().endMs() + 60_000;
    minutes = 60;
    return this;
  }

  public Duty duty() {
    return new Duty(fromMs, fromMs + Math.round(minutes * 60_000), figures);
  }

  public Evidence evidence() {
    List<Duty> all = new ArrayList<>(past);
    all.add(duty());
    Recording recording =
        new Recording(1, rig, START_MS, duty().endMs(), Map.of(), List.of(), List.of());
    Timeline timeline = Timeline.of(recording);
    return new Evidence(
        recording,
        timeline,
        List.of(),
        PhaseGrid.of(timeline, List.of()),
        List.of(),
        heat,
        Optional.empty(),
        PoolFigures.NONE,
        List.of(),
        List.of(),
        new MeterLoad(OptionalDouble.empty(), OptionalDouble.empty(), loadShownBy),
        all);
  }
}
