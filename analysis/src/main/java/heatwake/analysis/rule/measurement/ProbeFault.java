package heatwake.analysis.rule.measurement;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.RunEvent;
import heatwake.analysis.series.Series;
import heatwake.analysis.site.Heater;
import heatwake.analysis.timeline.BeyondCritical;
import heatwake.analysis.timeline.Screening;
import heatwake.analysis.timeline.WaterJump;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** Open, short, out of range or impossible values. */
public final class ProbeFault implements Rule {
  /** A pipe or air probe cannot change faster than this and come back, K; ours. */
  private static final double SPIKE_K = 8;

  /** Within this time, s; ours: the fastest clipped probes need 10 s for two thirds of a step. */
  private static final double SPIKE_S = 10;

  /** Fewer spikes may be single garbled messages; ours. */
  private static final int SPIKES = 3;

  /** So few readings just beyond what is possible are noise, by number and share of value; ours. */
  private static final int FEW = 3;

  private static final double NEAR_SHARE = 0.3;

  /** Up to this share of its readings a fault is a passing one; ours. */
  private static final double PASSING_SHARE = 0.001;

  @Override
  public String id() {
    return "probe-fault";
  }

  @Override
  public String summary() {
    return "A probe is open, shorted, out of range or says impossible values.";
  }

  @Override
  public String needs() {
    return "any reading";
  }

  @Override
  public String limits() {
    return "A reading outside what its channel can be (the channel table), a refrigerant"
        + " pressure a fifth above the upper end of the saturation line (ours), a fault reported by the"
        + " sensor's loop, 85 °C out of the blue (1-Wire power-on value: data sheet), a water probe"
        + " that jumps by more than 10 K within two readings and 25 s and back within 30 min while the flow"
        + " is steady and the other water probe moves by less than 2.5 K (ours: heaters warm moving"
        + " water by 2 to 6 K, common practice), or three"
        + " jumps of more than 8 K and back within 10 s (ours). Such readings take no part in the"
        + " analysis.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    List<Flag> flags = new ArrayList<>();
    for (Series series : evidence.recording().series().values()) {
      impossible(series)
          .or(() -> beyondCritical(series, evidence.recording().rig().heater()))
          .or(() -> jumps(series, evidence.recording()))
          .or(() -> spikes(series))
          .ifPresent(flags::add);
    }
    for (RunEvent event : evidence.recording().events()) {
      boolean isFault =
          event.kind() == EventKind.SENSOR_FAULT || event.kind() == EventKind.OUT_OF_RANGE;
      boolean isFlagged =
          Channel.find(event.subject())
              .filter(channel -> flags.stream().anyMatch(flag -> accuses(flag, channel)))
              .isPresent();
      if (isFault && !isFlagged) {
        flags.add(reported(evidence, event));
      }
    }
    return Outcome.of(flags);
  }

  private static boolean accuses(Flag flag, Channel channel) {
    return flag.channels().contains(channel);
  }

  private Optional<Flag> impossible(Series series) {
    Channel channel = series.channel();
    Unit unit = channel.storedUnit();
    BitSet impossible = Screening.impossible(series);
    int count = impossible.cardinality();
    int first = impossible.nextSetBit(0);
    int last = impossible.length() - 1;
    if (count == 0 || (count < FEW && isNear(channel, unit.fromSi(series.value(first))))) {
      return Optional.empty();
    }
    String text =
        String.format(
            Locale.ROOT,
            "%s read %s (%d of %d readings); possible is %s",
            channel.id(),
            Wording.reading(channel, series.value(first)),
            count,
            series.size(),
            Wording.everyday(channel.possibleRange()));
    return Optional.of(
        flag(
            channel,
            count <= PASSING_SHARE * series.size() ? Severity.INFO : Severity.WARNING,
            series.timeMs(first),
            series.timeMs(last),
            text));
  }

  /** Pressures that the refrigerant in the rig does not reach. */
  private Optional<Flag> beyondCritical(Series series, Heater heater) {
    BitSet beyond = BeyondCritical.in(series, heater);
    int count = beyond.cardinality();
    if (count < FEW) {
      return Optional.empty();
    }
    int first = beyond.nextSetBit(0);
    String text =
        String.format(
            Locale.ROOT,
            "%s read %s (%d of %d readings); %s does not reach %s in any heater",
            series.channel().id(),
            Wording.reading(series.channel(), series.value(first)),
            count,
            series.size(),
            heater.refrigerant().orElseThrow().designation(),
            Wording.reading(series.channel(), BeyondCritical.mostPa(heater).orElseThrow()));
    return Optional.of(
        flag(
            series.channel(),
            count <= PASSING_SHARE * series.size() ? Severity.INFO : Severity.WARNING,
            series.timeMs(first),
            series.timeMs(beyond.length() - 1),
            text));
  }

  /** Whether a value is only just impossible, as noise may make it. */
  private static boolean isNear(Channel channel, double stored) {
    double near = Math.abs(stored) * NEAR_SHARE;
    return channel.isPossible(stored - near) || channel.isPossible(stored + near);
  }

  /** Jumps that the rest of the water denies. */
  private Optional<Flag> jumps(Series series, Recording recording) {
    Series possible = Screening.possible(series);
    List<WaterJump> jumps = WaterJump.in(possible, recording);
    int readings = jumps.stream().mapToInt(jump -> jump.to() - jump.from()).sum();
    if (readings < FEW) {
      return Optional.empty();
    }
    WaterJump first = jumps.get(0);
    WaterJump last = jumps.get(jumps.size() - 1);
    String text =
        String.format(
            Locale.ROOT,
            "%s jumped from %s to %s and back%s (%d of %d readings) while the water flowed on and"
                + " %s moved by %s",
            series.channel().id(),
            Wording.celsius(first.beforeK()),
            Wording.celsius(first.awayK()),
            jumps.size() == 1 ? "" : ", " + jumps.size() + " times",
            readings,
            series.size(),
            first.partner().id(),
            Wording.kelvin(first.partnerK()));
    return Optional.of(
        flag(
            series.channel(),
            Severity.WARNING,
            possible.timeMs(first.from()),
            possible.timeMs(last.to() - 1),
            text));
  }

  /** Jumps away and back again within seconds: a loose contact. */
  private Optional<Flag> spikes(Series series) {
    if (series.channel().quantity() != Quantity.TEMPERATURE) {
      return Optional.empty();
    }
    int count = 0;
    int first = -1;
    int last = -1;
    for (int r = 1; r + 1 < series.size(); r++) {
      double up = series.value(r) - series.value(r - 1);
      double down = series.value(r + 1) - series.value(r);
      boolean quick = series.timeMs(r + 1) - series.timeMs(r - 1) <= SPIKE_S * 1000;
      if (quick && Math.abs(up) > SPIKE_K && Math.abs(down) > SPIKE_K && up * down < 0) {
        first = first < 0 ? r : first;
        last = r;
        count++;
      }
    }
    if (count < SPIKES) {
      return Optional.empty();
    }
    String text =
        String.format(
            Locale.ROOT,
            "%s jumped by %.1f K and back within seconds, %d times",
            series.channel().id(),
            Math.abs(series.value(first) - series.value(first - 1)),
            count);
    return Optional.of(
        flag(series.channel(), Severity.WARNING, series.timeMs(first), series.timeMs(last), text));
  }

  private Flag reported(Evidence evidence, RunEvent event) {
    Optional<Channel> channel = Channel.find(event.subject());
    return new Flag(
        id(),
        Side.MEASUREMENT,
        Severity.WARNING,
        event.startMs(),
        event.endMs().orElse(evidence.recording().endMs()),
        event.subject()
            + ": "
            + event.text()
            + (event.count() > 1 ? " (" + event.count() + " times)" : ""),
        causes(),
        nextCheck(event.subject()),
        channel.map(Set::of).orElse(Set.of()));
  }

  private Flag flag(Channel channel, Severity severity, long startMs, long endMs, String text) {
    return new Flag(
        id(),
        Side.MEASUREMENT,
        severity,
        startMs,
        endMs,
        text,
        causes(),
        nextCheck(channel.id()),
        Set.of(channel));
  }

  private static List<String> causes() {
    return List.of(
        "plug or wire loose, open or shorted",
        "water in the plug",
        "probe or its electronics broken",
        "wrong unit, register or scaling in the rig");
  }

  private static String nextCheck(String subject) {
    return "Move plug and cable of " + subject + " while watching the reading; swap the probe.";
  }
}
