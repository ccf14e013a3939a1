package heatwake.analysis.rule.measurement;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.RunEvent;
import heatwake.analysis.series.Series;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Open, short, out of range or impossible values. */
public final class ProbeFault implements Rule {
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
      ImpossibleReadings.in(series, evidence.recording().rig().heater())
          .or(() -> LooseContact.in(series, evidence.recording()))
          .map(this::flag)
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

  private Flag flag(FaultyReadings faulty) {
    return new Flag(
        id(),
        Side.MEASUREMENT,
        faulty.severity(),
        faulty.startMs(),
        faulty.endMs(),
        faulty.text(),
        causes(),
        nextCheck(faulty.channel().id()),
        Set.of(faulty.channel()));
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
