package heatwake.analysis.rule.water;

import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Comparator;
import java.util.List;

/**
 * One time without water.
 *
 * @param stretch instants without water
 * @param startsTheRun whether the run began without water
 * @param endsTheRun whether water did not come back within the run
 * @param heatedUntil whether the heater ran until the water stopped
 * @param runs when the compressor ran within it, in order
 * @param pump what the pump did meanwhile
 */
public record WaterLoss(
    Stretch stretch,
    boolean startsTheRun,
    boolean endsTheRun,
    boolean heatedUntil,
    List<Stretch> runs,
    Pump pump) {

  public WaterLoss {
    runs = List.copyOf(runs);
  }

  /** What the pump did while no water moved. */
  public enum Pump {
    RAN,
    STOOD,
    NOT_KNOWN
  }

  /** Heat that goes on unchanged this long without water says that a reading lies, s; ours. */
  private static final double HEAT_CANNOT_LAST_S = 300;

  /** A heater that runs longer than this has water, whatever a flow meter says, s; ours. */
  private static final double CANNOT_RUN_DRY_S = 900;

  /** Heat counts as unchanged within this share; ours. */
  private static final double UNCHANGED_SHARE = 0.3;

  /** All water stands with less than this part of the usual; ours. */
  private static final double STANDS_SHARE = 0.1;

  /** Whether the meter of all water shows that it moves on, past the heater. */
  boolean goesOnElsewhere(Timeline timeline) {
    return shareOfAllWater(timeline) > WaterLosses.PUSHES_SHARE;
  }

  /** Whether the meter of all water shows that it stands too. */
  boolean standsElsewhereToo(Timeline timeline) {
    return shareOfAllWater(timeline) < STANDS_SHARE;
  }

  /** Flow of all water over the usual; NaN unless both it and the heater's are metered. */
  private double shareOfAllWater(Timeline timeline) {
    double[] total = timeline.of(Channel.FLOW_TOTAL);
    return timeline.has(Channel.FLOW_HEATER)
        ? stretch.mean(total) / Stretch.meanWhere(total, WaterMovement.of(timeline)::yes)
        : Double.NaN;
  }

  /** The longest run of the compressor within it; of no length where it did not run. */
  private Stretch longestRun() {
    return runs.stream()
        .max(Comparator.comparingInt(Stretch::length))
        .orElse(new Stretch(stretch.from(), stretch.from()));
  }

  /** How long the compressor ran on (or began) without water at the longest, s. */
  public double overlapS(Timeline timeline) {
    return longestRun().durationS(timeline);
  }

  /**
   * Whether heat goes on, while the compressor runs, as it did before the water was lost. It cannot
   * for minutes without water, so one of the readings is wrong.
   */
  public boolean heatGoesOn(Timeline timeline) {
    if (overlapS(timeline) <= HEAT_CANNOT_LAST_S) {
      return false;
    }
    int settled = (int) (HEAT_CANNOT_LAST_S / timeline.stepS());
    Stretch ran = longestRun();
    int from = ran.from() + settled / 2;
    // Not before that run: a compressor that trips and tries again stands in hot water by then.
    int lost = stretch.from();
    double riseBefore = rise(timeline, lost - settled, lost);
    double riseLater = rise(timeline, from, ran.to());
    if (!Double.isNaN(riseBefore) && !Double.isNaN(riseLater)) {
      return Math.abs(riseLater - riseBefore) < UNCHANGED_SHARE * Math.abs(riseBefore);
    }
    double[] high = timeline.of(Channel.PRESSURE_DISCHARGE);
    double before = Stretch.mean(high, lost - settled, lost);
    double later = Stretch.mean(high, from, ran.to());
    return Math.abs(later - before) < UNCHANGED_SHARE / 3 * before;
  }

  private static double rise(Timeline timeline, int from, int to) {
    return Stretch.mean(timeline.of(Channel.WATER_OUT), from, to)
        - Stretch.mean(timeline.of(Channel.WATER_IN), from, to);
  }

  /**
   * Whether it is the reading that lies: heat goes on, and another probe contradicts it or only
   * flow meters, which may be blocked, have said so for longer than any heater can run dry. Where
   * pump or switch agree they are believed.
   */
  public boolean isMisread(Timeline timeline) {
    boolean metersOnly = !timeline.has(Channel.FLOW_SWITCH) && !timeline.has(Channel.PUMP_ON);
    return heatGoesOn(timeline)
        && (!WaterMovement.allStand(timeline, longestRun())
            || (metersOnly && overlapS(timeline) > CANNOT_RUN_DRY_S));
  }

  /** Its length, s. */
  public double durationS(Timeline timeline) {
    return stretch.durationS(timeline);
  }
}
