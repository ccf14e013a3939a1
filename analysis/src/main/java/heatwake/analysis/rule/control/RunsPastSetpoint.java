package heatwake.analysis.rule.control;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;

/** The heater keeps heating more than 1 K above the set temperature. */
public final class RunsPastSetpoint implements Rule {
  /** Overshoot that no dead band explains, K; contract of the rule. */
  private static final double OVERSHOOT_K = 1;

  /** For at least this long, s; ours: a passing cloud of warm water is shorter. */
  private static final double LEAST_S = 900;

  /** Values are smoothed over this time before they are judged, s; ours. */
  private static final double SMOOTH_S = 120;

  @Override
  public String id() {
    return "runs-past-setpoint";
  }

  @Override
  public String summary() {
    return "The heater keeps heating more than 1 K above the set temperature.";
  }

  @Override
  public String needs() {
    return "pool.setpoint, water-pool or water-in, and power, current or pressures for the"
        + " compressor";
  }

  @Override
  public String limits() {
    return "Compressor on and water more than 1 K and 3 standard uncertainties of its probe above"
        + " the set temperature for 15 min (ours). With both water-pool and water-in, the cooler"
        + " one counts.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    OptionalDouble setpointK = evidence.recording().rig().pool().setpointK();
    Timeline timeline = evidence.timeline();
    if (setpointK.isEmpty()) {
      return Outcome.notEnoughData("no pool.setpoint in the rig");
    }
    if (!timeline.has(Channel.WATER_POOL) && !timeline.has(Channel.WATER_IN)) {
      return Outcome.notEnoughData("no water-pool or water-in reading");
    }
    PhaseGrid phases = evidence.phaseGrid();
    double[] water = cooler(evidence);
    double limitK = setpointK.getAsDouble() + OVERSHOOT_K + Doubt.FACTOR * uncertaintyK(evidence);
    int smooth = (int) Math.max(1, Math.round(SMOOTH_S / timeline.stepS()));
    double[] smoothed = runningMean(water, smooth);
    List<Stretch> past =
        Stretch.where(
                timeline.size(),
                i ->
                    phases.compressorRuns(i)
                        && !phases.is(i, Phase.DEFROST)
                        && smoothed[i] > limitK)
            .stream()
            .filter(stretch -> stretch.durationS(timeline) >= LEAST_S)
            .toList();
    return past.isEmpty()
        ? Outcome.clear()
        : Outcome.flagged(flag(evidence, past, smoothed, setpointK.getAsDouble()));
  }

  /** The cooler of pool and entering water; the entering water only while water moves. */
  private static double[] cooler(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    Track moves = WaterMovement.of(timeline);
    double[] pool = timeline.of(Channel.WATER_POOL);
    double[] in = timeline.of(Channel.WATER_IN);
    double[] cooler = new double[timeline.size()];
    for (int i = 0; i < cooler.length; i++) {
      double entering = moves.no(i) ? Double.NaN : in[i];
      cooler[i] =
          Double.isNaN(pool[i])
              ? entering
              : Double.isNaN(entering) ? pool[i] : Math.min(pool[i], entering);
    }
    return cooler;
  }

  private static double[] runningMean(double[] values, int window) {
    double[] smoothed = new double[values.length];
    double sum = 0;
    int count = 0;
    for (int i = 0; i < values.length; i++) {
      if (!Double.isNaN(values[i])) {
        sum += values[i];
        count++;
      }
      if (i >= window && !Double.isNaN(values[i - window])) {
        sum -= values[i - window];
        count--;
      }
      smoothed[i] = count == 0 ? Double.NaN : sum / count;
    }
    return smoothed;
  }

  private static double uncertaintyK(Evidence evidence) {
    double largest = 0;
    for (Channel channel : channels(evidence.timeline())) {
      ProbeUncertainty probe = ProbeUncertainty.of(evidence.recording().rig(), channel);
      largest = Math.max(largest, probe.absolute());
    }
    return largest;
  }

  private static Set<Channel> channels(Timeline timeline) {
    Set<Channel> channels = EnumSet.noneOf(Channel.class);
    for (Channel channel : List.of(Channel.WATER_POOL, Channel.WATER_IN)) {
      if (timeline.has(channel)) {
        channels.add(channel);
      }
    }
    return channels;
  }

  private Flag flag(Evidence evidence, List<Stretch> past, double[] waterK, double setpointK) {
    Timeline timeline = evidence.timeline();
    double seconds = past.stream().mapToDouble(one -> one.durationS(timeline)).sum();
    double highest = Double.NEGATIVE_INFINITY;
    for (Stretch stretch : past) {
      for (int i = stretch.from(); i < stretch.to(); i++) {
        highest = Math.max(highest, waterK[i]);
      }
    }
    return new Flag(
        id(),
        Side.CONTROL,
        Severity.WARNING,
        timeline.timeMs(past.get(0).from()),
        timeline.timeMs(past.get(past.size() - 1).to() - 1),
        "Heated on for "
            + Wording.duration(seconds)
            + " with the water up to "
            + Wording.celsius(highest)
            + ", "
            + Wording.kelvin(highest - setpointK)
            + " above the set "
            + Wording.celsius(setpointK),
        List.of(
            "the set temperature in the control is higher than the one in the rig",
            "the control's water sensor reads low, or sits where water does not pass",
            "contactor or control output stuck on"),
        "Compare the set temperature and the water temperature the control shows with a thermometer"
            + " in the water.",
        channels(timeline));
  }
}
