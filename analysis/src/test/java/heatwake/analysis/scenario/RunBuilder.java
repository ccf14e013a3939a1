package heatwake.analysis.scenario;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Note;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.RunEvent;
import heatwake.analysis.series.Series;
import heatwake.analysis.site.Rig;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalLong;
import java.util.Random;
import java.util.Set;

/**
 * Writes a recording for a test as a story: "ten minutes off, five circulating, half a minute fan,
 * an hour heating". Values are given and kept in stored units (Cel, L/min, kPa, W, A, V).
 *
 * <pre>{@code
 * Recording recording =
 *     RunBuilder.run()
 *         .off(10).circulating(5).fan(0.5).heating(60)
 *         .set(Channel.FLOW_HEATER, 60).heating(20)
 *         .circulating(5)
 *         .recording();
 * }</pre>
 *
 * <p>Each state has a resting point for every channel, towards which the channel moves with its own
 * time constant. It is a caricature, meant for tests of single rules; it shares nothing with them.
 */
public final class RunBuilder {
  private static final long START_MS = Instant.parse("2031-05-04T18:00:00Z").toEpochMilli();

  private Rig rig = Rigs.typical();
  private final Set<Channel> clipped = EnumSet.copyOf(ALL_BUT_RARE);
  private final Map<Channel, Double> heating = new EnumMap<>(Channel.class);
  private final Map<Channel, Double> fixed = new EnumMap<>(Channel.class);
  private final Map<Channel, Change> changes = new EnumMap<>(Channel.class);
  private final Map<Channel, Double> now = new EnumMap<>(Channel.class);
  private final Map<Channel, Series.Builder> readings = new EnumMap<>(Channel.class);
  private final Map<Channel, Double> noise = new EnumMap<>(Channel.class);
  private final Map<Channel, Double> resolution = new EnumMap<>(Channel.class);
  private final List<PhaseSpan> truth = new ArrayList<>();
  private final List<RunEvent> events = new ArrayList<>();
  private final List<Note> notes = new ArrayList<>();
  private final Random random = new Random(5);
  private double everyS = 1;
  private long elapsedS;
  private double poolCel = 26;
  private double airCel = 24;

  /** Channels a thorough technician clips. */
  private static final Set<Channel> ALL_BUT_RARE =
      EnumSet.of(
          Channel.WATER_IN,
          Channel.WATER_OUT,
          Channel.WATER_POOL,
          Channel.FLOW_HEATER,
          Channel.PRESSURE_DISCHARGE,
          Channel.PRESSURE_SUCTION,
          Channel.TEMP_DISCHARGE,
          Channel.TEMP_LIQUID,
          Channel.TEMP_SUCTION,
          Channel.AIR_IN,
          Channel.AIR_OUT,
          Channel.AIR_AMBIENT,
          Channel.POWER,
          Channel.CURRENT,
          Channel.VOLTAGE,
          Channel.PUMP_ON,
          Channel.FLOW_SWITCH);

  /** Changes what a probe says: time in seconds since the run began and the true value. */
  @FunctionalInterface
  public interface Change {
    double apply(double atS, double value);
  }

  private RunBuilder() {
    heating.put(Channel.FLOW_HEATER, 150.0);
    heating.put(Channel.FLOW_TOTAL, 250.0);
    heating.put(Channel.PRESSURE_FILTER, 80.0);
    heating.put(Channel.PRESSURE_DISCHARGE, 2300.0);
    heating.put(Channel.PRESSURE_SUCTION, 950.0);
    heating.put(Channel.TEMP_DISCHARGE, 68.0);
    heating.put(Channel.TEMP_LIQUID, 33.0);
    heating.put(Channel.TEMP_SUCTION, 17.0);
    heating.put(Channel.POWER, 2700.0);
    heating.put(Channel.CURRENT, 12.2);
    heating.put(Channel.VOLTAGE, 230.0);
  }

  /** Starts a story: one reading a second on every usual channel, air 24, pool 26 Cel. */
  public static RunBuilder run() {
    return new RunBuilder();
  }

  public RunBuilder rig(Rig newRig) {
    rig = newRig;
    return this;
  }

  /** Clips only these channels. */
  public RunBuilder only(Channel... channels) {
    clipped.clear();
    clipped.addAll(Arrays.asList(channels));
    return this;
  }

  /** Leaves these channels out. */
  public RunBuilder without(Channel... channels) {
    clipped.removeAll(Arrays.asList(channels));
    return this;
  }

  /** Clips these channels as well. */
  public RunBuilder with(Channel... channels) {
    clipped.addAll(Arrays.asList(channels));
    return this;
  }

  /** Time between readings. */
  public RunBuilder every(double seconds) {
    everyS = seconds;
    return this;
  }

  public RunBuilder pool(double cel) {
    poolCel = cel;
    return this;
  }

  public RunBuilder air(double cel) {
    airCel = cel;
    return this;
  }

  /** Random error of each reading of a channel, standard deviation. */
  public RunBuilder noise(Channel channel, double standardDeviation) {
    noise.put(channel, standardDeviation);
    return this;
  }

  /** Rounds each reading of a channel to multiples of a step. */
  public RunBuilder resolution(Channel channel, double step) {
    resolution.put(channel, step);
    return this;
  }

  /**
   * What a channel settles at while heating, from now on (for water-out: the rise over water-in).
   */
  public RunBuilder heatingAt(Channel channel, double value) {
    heating.put(channel, value);
    return this;
  }

  /** From now on a channel truly stands at a value, whatever the state. */
  public RunBuilder set(Channel channel, double value) {
    fixed.put(channel, value);
    return this;
  }

  /** From now on a channel follows the state again and its probe tells the truth. */
  public RunBuilder free(Channel channel) {
    fixed.remove(channel);
    changes.remove(channel);
    return this;
  }

  /** From now on the probe says something else than the truth; NaN is silence. */
  public RunBuilder change(Channel channel, Change change) {
    changes.put(channel, change);
    return this;
  }

  /** From now on a channel sends nothing. */
  public RunBuilder silent(Channel channel) {
    return change(channel, (atS, value) -> Double.NaN);
  }

  public RunBuilder off(double minutes) {
    return state(Phase.OFF, minutes);
  }

  public RunBuilder circulating(double minutes) {
    return state(Phase.CIRCULATING, minutes);
  }

  public RunBuilder fan(double minutes) {
    return state(Phase.FAN, minutes);
  }

  /** Compressor on; the truth calls the first five minutes starting. */
  public RunBuilder heating(double minutes) {
    boolean goesOn = !truth.isEmpty() && truth.get(truth.size() - 1).phase() == Phase.STEADY;
    double startingMinutes = goesOn ? 0 : Math.min(5, minutes);
    state(Phase.STARTING, startingMinutes);
    return state(Phase.STEADY, minutes - startingMinutes);
  }

  /** Reverse-cycle defrost: compressor on, fan off, heat taken from the water. */
  public RunBuilder defrost(double minutes) {
    return state(Phase.DEFROST, minutes);
  }

  /** Nothing at all is recorded; everything has settled in its next state when readings return. */
  public RunBuilder nothingRecorded(double minutes) {
    now.keySet().retainAll(List.of(Channel.ENERGY));
    elapsedS += Math.round(minutes * 60);
    return this;
  }

  public RunBuilder event(EventKind kind, String subject, String text) {
    events.add(new RunEvent(kind, subject, nowMs(), OptionalLong.empty(), 1, text));
    return this;
  }

  public RunBuilder note(String text) {
    notes.add(new Note(nowMs(), text));
    return this;
  }

  /** Time reached, UTC milliseconds. */
  public long nowMs() {
    return START_MS + elapsedS * 1000;
  }

  /** Which phases the story went through. */
  public List<PhaseSpan> truth() {
    return List.copyOf(truth);
  }

  public Recording recording() {
    Map<Channel, Series> series = new EnumMap<>(Channel.class);
    readings.forEach((channel, builder) -> series.put(channel, builder.build()));
    return new Recording(1, rig, START_MS, nowMs(), series, events, notes);
  }

  private RunBuilder state(Phase phase, double minutes) {
    long seconds = Math.round(minutes * 60);
    if (seconds == 0) {
      return this;
    }
    long from = nowMs();
    for (long s = 0; s < seconds; s++) {
      for (Channel channel : Channel.values()) {
        move(channel, phase);
      }
      if (elapsedS % Math.max(1, Math.round(everyS)) == 0) {
        clipped.forEach(this::read);
      }
      elapsedS++;
    }
    int last = truth.size() - 1;
    if (last >= 0 && truth.get(last).phase() == phase && truth.get(last).endMs() == from) {
      from = truth.remove(last).startMs();
    }
    truth.add(new PhaseSpan(phase, from, nowMs()));
    return this;
  }

  private void move(Channel channel, Phase phase) {
    double target = fixed.getOrDefault(channel, target(channel, phase));
    double before = now.getOrDefault(channel, target);
    double share =
        fixed.containsKey(channel) ? 1 : 1 - Math.exp(-1 / timeConstantS(channel, phase));
    now.put(channel, before + share * (target - before));
  }

  private void read(Channel channel) {
    double value = now.get(channel) + random.nextGaussian() * noise.getOrDefault(channel, 0.0);
    double step = resolution.getOrDefault(channel, 0.0);
    if (step > 0) {
      value = Math.rint(value / step) * step;
    }
    Change change = changes.get(channel);
    if (change != null) {
      value = change.apply((double) elapsedS, value);
    }
    if (!Double.isNaN(value)) {
      readings.computeIfAbsent(channel, Series::of).add(nowMs(), channel.storedUnit().toSi(value));
    }
  }

  private double target(Channel channel, Phase phase) {
    boolean heats = phase == Phase.STARTING || phase == Phase.STEADY;
    boolean water = phase != Phase.OFF;
    boolean defrosts = phase == Phase.DEFROST;
    double rise = heating.getOrDefault(Channel.WATER_OUT, 1.6);
    double standingKPa = 1050 + 33 * (airCel - 10);
    return switch (channel) {
      case WATER_IN -> water ? poolCel : airCel + 0.6 * (poolCel - airCel);
      case WATER_OUT ->
          heats ? poolCel + rise : defrosts ? poolCel - 1.2 : water ? poolCel : airCel + 1;
      case WATER_RETURN -> heats ? poolCel + 0.6 * rise : poolCel;
      case WATER_POOL -> poolCel;
      case FLOW_HEATER, FLOW_TOTAL, PRESSURE_FILTER -> water ? heating.get(channel) : 0;
      case PRESSURE_DISCHARGE -> heats ? heating.get(channel) : defrosts ? 900 : standingKPa;
      case PRESSURE_SUCTION -> heats ? heating.get(channel) : defrosts ? 500 : standingKPa;
      case TEMP_DISCHARGE, TEMP_LIQUID, TEMP_SUCTION ->
          heats ? heating.get(channel) : defrosts ? 20 : airCel;
      case AIR_IN, AIR_AMBIENT -> airCel;
      case AIR_OUT -> heats ? airCel - 6 : airCel;
      case HUMIDITY_IN -> 60;
      case POWER ->
          heats
              ? heating.get(channel)
              : defrosts ? 0.7 * heating.get(channel) : phase == Phase.FAN ? 150 : 12;
      case CURRENT ->
          heats
              ? heating.get(channel)
              : defrosts ? 0.7 * heating.get(channel) : phase == Phase.FAN ? 0.75 : 0.08;
      case VOLTAGE -> heating.get(channel);
      case ENERGY ->
          now.getOrDefault(channel, 1000.0) + now.getOrDefault(Channel.POWER, 0.0) / 3.6e6;
      case WIND_SPEED -> 1;
      case PUMP_ON, FLOW_SWITCH -> water ? 1 : 0;
    };
  }

  private static double timeConstantS(Channel channel, Phase phase) {
    if (channel.quantity() == Quantity.STATE || channel == Channel.ENERGY) {
      return 1e-3;
    }
    return switch (channel) {
      case POWER, CURRENT, VOLTAGE -> 0.5;
      case FLOW_HEATER, FLOW_TOTAL, PRESSURE_FILTER -> 2;
      case WATER_IN, WATER_OUT, WATER_RETURN -> phase == Phase.OFF ? 3600 : 30;
      case PRESSURE_DISCHARGE, PRESSURE_SUCTION -> 40;
      case TEMP_DISCHARGE, TEMP_LIQUID, TEMP_SUCTION -> 90;
      default -> 60;
    };
  }
}
