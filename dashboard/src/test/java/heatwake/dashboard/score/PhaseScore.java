package heatwake.dashboard.score;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.series.Recording;
import heatwake.analysis.timeline.Timeline;
import heatwake.dashboard.demo.plant.Truth;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * Phases found against what the heater did, at every moment further than ten seconds from a change.
 * Like {@link ScoredBench} it judges rather than checks and is run on its own; {@code bench.only}
 * chooses cases by name.
 */
class PhaseScore {
  private static final double EDGE_S = 10;

  @Test
  void seen() {
    List<Case> cases = new ArrayList<>(HealthyCases.of(Stock.seen(), 20_310_504));
    cases.addAll(FaultCases.of(Stock.seen(), 40_513_002));
    Predicate<String> wanted = Pattern.compile(System.getProperty("bench.only", "")).asPredicate();
    cases.parallelStream()
        .filter(one -> wanted.test(one.name()))
        .map(PhaseScore::line)
        .toList()
        .forEach(System.out::println);
  }

  /**
   * One case: what was taken for what, in per cent of the run, and cycles found of those that were.
   */
  private static String line(Case one) {
    SimulatedRecording played = SimulatedRecording.of(one);
    Recording recording = played.recording();
    Truth truth = played.truth();
    Phases phases = Phases.of(Timeline.of(recording), recording);
    Map<String, Integer> wrong = new TreeMap<>();
    int edge = (int) (EDGE_S / truth.stepS());
    for (int i = 0; i < truth.size(); i++) {
      Truth.Doing was = truth.doing(i);
      long atMs = one.night().startMs() + Math.round(i * truth.stepS() * 1000);
      Phase found = phases.at(atMs);
      if (!agrees(was, found) && isFarFromChange(truth, i, edge)) {
        wrong.merge(was + " taken for " + found, 1, Integer::sum);
      }
    }
    StringBuilder text = new StringBuilder(200);
    text.append(String.format(Locale.ROOT, "%-66s", one.name()));
    text.append(phases.cycles().size()).append(" of ").append(truth.startsS().size());
    text.append(" cycles");
    wrong.forEach(
        (what, count) ->
            text.append(
                String.format(Locale.ROOT, "; %s %.2f %%", what, 100.0 * count / truth.size())));
    return text.toString();
  }

  private static boolean isFarFromChange(Truth truth, int i, int edge) {
    for (int k = Math.max(0, i - edge); k <= Math.min(truth.size() - 1, i + edge); k++) {
      if (truth.doing(k) != truth.doing(i)) {
        return false;
      }
    }
    return true;
  }

  /** A coil thawed by the fan with the compressor at rest is a fan phase by the contract. */
  private static boolean agrees(Truth.Doing was, Phase found) {
    return switch (was) {
      case OFF -> found == Phase.OFF;
      case CIRCULATING -> found == Phase.CIRCULATING;
      case FAN -> found == Phase.FAN;
      case COMPRESSOR -> found == Phase.STARTING || found == Phase.STEADY;
      case DEFROST -> found == Phase.DEFROST || found == Phase.FAN;
    };
  }
}
