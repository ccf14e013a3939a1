package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Verdict;
import heatwake.analysis.rule.Evidence;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What comes of putting the evidence before every rule.
 *
 * @param flags rules that fired and stand, the gravest first, then by time
 * @param verdict whose side the trouble is on
 * @param heatDoubt why heat and COP of the run cannot be, in words; empty if they can
 * @param missing which rules could not look and why, one sentence each
 */
public record Judgement(
    List<Flag> flags, Verdict verdict, Optional<String> heatDoubt, List<String> missing) {
  public Judgement {
    flags = List.copyOf(flags);
    missing = List.copyOf(missing);
  }

  /** Judges the evidence of one run. */
  public static Judgement of(Evidence evidence) {
    return of(Raised.of(evidence), evidence);
  }

  /** Judges what the rules have said of the evidence. */
  public static Judgement of(Raised raised, Evidence evidence) {
    return of(Silencing.of(raised.flags()), raised.missing(), evidence);
  }

  /**
   * Judges a run of which some readings are in doubt. What is said of the machine has to be said
   * without them too; what is said of the probes comes from all of them.
   *
   * @param raised what the rules say of all readings
   * @param left what they say without those in doubt
   * @param evidence that is left
   */
  public static Judgement of(Raised raised, Raised left, Evidence evidence) {
    List<Flag> standing = new ArrayList<>();
    Set<String> ofMachine = new HashSet<>();
    for (Flag flag : Silencing.of(raised.flags())) {
      if (flag.side() == Side.MEASUREMENT) {
        standing.add(flag);
      } else {
        ofMachine.add(flag.rule());
      }
    }
    left.flags().stream()
        .filter(flag -> flag.side() != Side.MEASUREMENT && ofMachine.contains(flag.rule()))
        .forEach(standing::add);
    return of(standing, raised.missing(), evidence);
  }

  private static Judgement of(List<Flag> standing, List<String> missing, Evidence evidence) {
    FlagSides sides = new FlagSides(evidence);
    List<Flag> sided = standing.stream().map(sides::sided).toList();
    // No trouble of the machine explains a heat that cannot be, so such flags are folded apart.
    Map<Boolean, List<Flag>> handed =
        sided.stream().collect(Collectors.partitioningBy(sides::isHanded));
    List<Flag> roots =
        new ArrayList<>(Consequences.fold(FlagsOfRun.of(handed.get(false), evidence)));
    roots.addAll(Consequences.fold(FlagsOfRun.of(handed.get(true), evidence)));
    roots.sort(Raised.GRAVEST_FIRST);
    List<String> lacking = new ArrayList<>(missing);
    Optional<String> heatDoubt = sides.heatDoubt();
    heatDoubt.ifPresent(why -> lacking.add("heat and COP: not to be believed, " + why));
    return new Judgement(roots, new Reasoning(evidence, sides).verdict(roots), heatDoubt, lacking);
  }
}
