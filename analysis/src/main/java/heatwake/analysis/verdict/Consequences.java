package heatwake.analysis.verdict;

import heatwake.analysis.finding.Consequence;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * One cause, one flag: a flag that another explains is named in that one's evidence instead of
 * standing beside it. The {@linkplain ConsequenceTable table} says which rule explains which, and
 * on what conditions; here it is walked.
 */
final class Consequences {
  private final FlagsOfRun run;

  private Consequences(FlagsOfRun run) {
    this.run = run;
  }

  /** The root flags of a run, each with its consequences named. */
  static List<Flag> fold(FlagsOfRun run) {
    return new Consequences(run).roots();
  }

  private List<Flag> roots() {
    Map<Flag, List<Flag>> following = new LinkedHashMap<>();
    for (Flag flag : run.flags()) {
      root(flag)
          .ifPresent(root -> following.computeIfAbsent(root, key -> new ArrayList<>()).add(flag));
    }
    List<Flag> roots = new ArrayList<>();
    for (Flag flag : run.flags()) {
      if (root(flag).isEmpty()) {
        roots.add(naming(flag, following.getOrDefault(flag, List.of())));
      }
    }
    return roots;
  }

  /** The flag that, at the end of the chain, explains this one. */
  private Optional<Flag> root(Flag flag) {
    Optional<Flag> cause = cause(flag);
    return cause.isEmpty() ? cause : Optional.of(root(cause.get()).orElseGet(cause::orElseThrow));
  }

  private Optional<Flag> cause(Flag flag) {
    return ConsequenceTable.explained().entrySet().stream()
        .flatMap(row -> cause(row.getKey(), row.getValue(), flag).stream())
        .findFirst();
  }

  /** The first flag of a rule that explains another by that rule's row of the table. */
  private Optional<Flag> cause(String rule, List<Consequent> row, Flag flag) {
    return row.stream()
        .filter(entry -> entry.rule().equals(flag.rule()))
        .flatMap(
            entry ->
                run.flags().stream()
                    .filter(other -> other.rule().equals(rule) && entry.follows(other, flag, run)))
        .findFirst();
  }

  private static Flag naming(Flag flag, List<Flag> following) {
    if (following.isEmpty()) {
      return flag;
    }
    Severity gravest =
        following.stream().map(Flag::severity).reduce(flag.severity(), Consequences::graver);
    return new Flag(
        flag.rule(),
        flag.side(),
        gravest,
        flag.startMs(),
        flag.endMs(),
        flag.evidence()
            + Consequence.LEAD
            + following.stream()
                .map(one -> one.rule() + " (" + one.evidence() + ")")
                .collect(Collectors.joining("; ")),
        flag.causes(),
        flag.nextCheck(),
        flag.channels(),
        following.stream().map(one -> new Consequence(one.rule(), one.evidence())).toList());
  }

  private static Severity graver(Severity one, Severity other) {
    return one.compareTo(other) >= 0 ? one : other;
  }
}
