package heatwake.analysis.verdict;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.rule.Evidence;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What is known of the heater beside a verdict that is about the site. A pool that loses its heat
 * and a heater that ails may meet, and whoever is told of the pool wants to know whether the heater
 * is good; where no flag has a word of it, that is said all the same.
 *
 * @param figures in words
 * @param wouldDecide what settles it; empty where the heater is sound
 */
record HeaterBeside(List<String> figures, List<String> wouldDecide) {
  /** Sides whose trouble lies outside the machine and leaves open how that fares. */
  private static final Set<Side> OF_THE_SITE = EnumSet.of(Side.POOL, Side.SCHEDULE);

  /** Sides of flags that have a word of the machine, or of what it works between. */
  private static final Set<Side> OF_THE_MACHINE =
      EnumSet.of(Side.REFRIGERANT, Side.WATER, Side.AIRFLOW, Side.UNDECIDED);

  private static final String ITSELF = "the heater itself: ";

  /** Empty where a flag speaks of the machine, or nothing is known of it. */
  static Optional<HeaterBeside> of(Side side, List<Flag> flags, Evidence evidence) {
    if (!OF_THE_SITE.contains(side)
        || evidence.duty().isEmpty()
        || flags.stream().anyMatch(flag -> OF_THE_MACHINE.contains(flag.side()))) {
      return Optional.empty();
    }
    Soundness sound = Soundness.of(evidence);
    if (sound.confidence() > 0) {
      return Optional.of(new HeaterBeside(List.of(ITSELF + sound.because().get(0)), List.of()));
    }
    return Optional.of(
        new HeaterBeside(
            List.of(ITSELF + String.join("; ", sound.because())), sound.wouldDecide()));
  }
}
