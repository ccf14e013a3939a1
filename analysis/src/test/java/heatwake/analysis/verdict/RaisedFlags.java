package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import java.util.List;
import java.util.Set;

/** Flags as rules raise them, minutes from the beginning of a run. */
final class RaisedFlags {
  private RaisedFlags() {}

  static Flag flag(String rule, Side side, long fromMin, long toMin, Channel... channels) {
    return new Flag(
        rule,
        side,
        Severity.WARNING,
        fromMin * 60_000,
        toMin * 60_000,
        "evidence of " + rule,
        List.of(),
        "look at it",
        Set.of(channels));
  }

  static Flag alarm(Flag flag) {
    return new Flag(
        flag.rule(),
        flag.side(),
        Severity.ALARM,
        flag.startMs(),
        flag.endMs(),
        flag.evidence(),
        flag.causes(),
        flag.nextCheck(),
        flag.channels());
  }
}
