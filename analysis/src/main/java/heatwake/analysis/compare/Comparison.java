package heatwake.analysis.compare;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Rig;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Two runs of one heater on equal conditions, so that "it got worse" is a figure with an
 * uncertainty.
 *
 * <p>Each run is held against what the nameplate promises at its own air and water. The
 * measurements of the two runs count as independent, which errs to the safe side when the same
 * probes were used. Without rating points two runs are comparable only where their conditions
 * hardly differ.
 *
 * <p>A change of figures of which one is in doubt is no change of the heater: it is given together
 * with the doubt, and nothing is concluded from it.
 *
 * @param runA number of the earlier run, by which is divided
 * @param runB number of the later run
 * @param heatChange heat of B over heat of A on equal conditions, 1 for no change
 * @param copChange COP of B over COP of A on equal conditions
 * @param heatRatioA heat of A over the nameplate's at its conditions
 * @param heatRatioB heat of B over the nameplate's at its conditions
 * @param airA entering air of A, K
 * @param airB entering air of B, K
 * @param waterA entering water of A, K
 * @param waterB entering water of B, K
 * @param outcome what the heat says
 * @param heatDoubts why the heat of a run is not to be believed, one sentence each
 * @param copDoubts why the COP of a run is not to be believed; those of the heat are among them
 * @param missing what kept a figure from being computed, one sentence each
 */
public record Comparison(
    long runA,
    long runB,
    Optional<Estimate> heatChange,
    Optional<Estimate> copChange,
    Optional<Estimate> heatRatioA,
    Optional<Estimate> heatRatioB,
    OptionalDouble airA,
    OptionalDouble airB,
    OptionalDouble waterA,
    OptionalDouble waterB,
    Outcome outcome,
    List<String> heatDoubts,
    List<String> copDoubts,
    List<String> missing) {

  /** What two runs' heat says. */
  public enum Outcome {
    /** Less heat than before, beyond the uncertainty. */
    WORSE("worse"),
    /** No change that the uncertainty could tell. */
    SAME("no change beyond the uncertainty"),
    /** More heat than before, beyond the uncertainty. */
    BETTER("better"),
    /** It cannot be said. */
    UNKNOWN("cannot be said");

    private final String words;

    Outcome(String words) {
      this.words = words;
    }

    public String words() {
      return words;
    }
  }

  public Comparison {
    heatDoubts = List.copyOf(heatDoubts);
    copDoubts = List.copyOf(copDoubts);
    missing = List.copyOf(missing);
  }

  /** Compares run B with run A; the rigs say whether they are of one heater. */
  public static Comparison of(Rig rigA, Findings a, Rig rigB, Findings b) {
    RunLevel levelA = RunLevel.of(a);
    RunLevel levelB = RunLevel.of(b);
    List<String> missing = new ArrayList<>();
    sayUnlikeHeaters(rigA.heater(), rigB.heater(), missing);
    EqualConditions conditions = new EqualConditions(levelA, levelB);
    Optional<Estimate> heat = conditions.heat();
    Optional<Estimate> cop = conditions.cop();
    if (heat.isEmpty() && conditions.areAlike()) {
      heat = conditions.plainHeat();
      cop = conditions.plainCop();
    }
    if (heat.isEmpty()) {
      missing.add(why(a, levelA));
      missing.add(why(b, levelB));
    }
    RunDoubt doubtA = RunDoubt.of(a);
    RunDoubt doubtB = RunDoubt.of(b);
    List<String> heatDoubts = both(doubtA.heat(), doubtB.heat());
    return new Comparison(
        a.run(),
        b.run(),
        heat,
        cop,
        levelA.heatRatio(),
        levelB.heatRatio(),
        levelA.airK(),
        levelB.airK(),
        levelA.waterInK(),
        levelB.waterInK(),
        heatDoubts.isEmpty() ? outcome(heat) : Outcome.UNKNOWN,
        heatDoubts,
        both(doubtA.cop(), doubtB.cop()),
        missing.stream().filter(text -> !text.isEmpty()).toList());
  }

  private static List<String> both(List<String> ofA, List<String> ofB) {
    return Stream.concat(ofA.stream(), ofB.stream()).toList();
  }

  private static Outcome outcome(Optional<Estimate> change) {
    if (change.isEmpty()) {
      return Outcome.UNKNOWN;
    }
    double away = change.get().value() - 1;
    if (Math.abs(away) <= change.get().expanded()) {
      return Outcome.SAME;
    }
    return away < 0 ? Outcome.WORSE : Outcome.BETTER;
  }

  private static String why(Findings findings, RunLevel level) {
    String run = "run " + findings.run() + ": ";
    if (findings.steady().isEmpty()) {
      return run + "no steady running to compare";
    }
    if (level.heatW().isEmpty()) {
      return run + "no heat figure; clip water-in, water-out and a flow";
    }
    return level.heatRatio().isEmpty()
        ? run + "no expected heat at its conditions; state [[heater.rating]] and clip air-in"
        : "";
  }

  private static void sayUnlikeHeaters(Heater a, Heater b, List<String> missing) {
    if (!a.ratings().equals(b.ratings()) || !a.label().equals(b.label())) {
      missing.add(
          "the two runs' rigs do not state the same heater (\""
              + a.label()
              + "\" and \""
              + b.label()
              + "\", or other ratings); the comparison holds only if they are one");
    }
  }
}
