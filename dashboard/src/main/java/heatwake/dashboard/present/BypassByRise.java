package heatwake.dashboard.present;

import heatwake.analysis.finding.BypassFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.EnumSet;
import java.util.Set;

/**
 * Sets the bypass by the rise, where no meter tells the flow. The rise tells the flow only of a
 * heater that gives about the heat expected: at part load or with a fault it is smaller at any
 * flow. One beyond the range is too little water even so, the more as less heat is behind it.
 */
final class BypassByRise {
  /** Less power than this share of the expected is part load; see low-heat. */
  private static final double FULL_LOAD = 0.95;

  /** Sides whose flags mean less heat than expected. */
  private static final Set<Side> OF_HEAT =
      EnumSet.of(Side.REFRIGERANT, Side.AIRFLOW, Side.UNDECIDED);

  private static final Counsel UNKNOWN =
      new Counsel("The rise is not known: clip water-in and water-out.", Tone.STALE);
  private static final Counsel MORE_WATER =
      new Counsel(
          "Rise too great: too little water, or more heat than the nameplate promises. Turn the"
              + " bypass a little towards the heater, look at strainer and filter, and wait for the"
              + " rise to settle.",
          Tone.WARNING);
  private static final Counsel LESS_WATER =
      new Counsel(
          "Rise too small: more water than the nameplate allows, or less heat than it promises. See"
              + " first that the heater runs at full output; then turn the bypass a little past the"
              + " heater and wait for the rise to settle.",
          Tone.WARNING);
  private static final Counsel FAULT_FIRST =
      new Counsel(
          "The flags say that the heat may be low: a small rise is no news of the bypass then. Look"
              + " at the heat first, or clip flow-heater.",
          Tone.PLAIN);
  private static final Counsel NEAR_AN_END =
      new Counsel(
          "Rise at the edge of the range: nearer than today's expected heat can tell. Move the"
              + " bypass a little towards the middle.",
          Tone.PLAIN);
  private static final Counsel WITHIN =
      new Counsel("Rise within the range: the heater has its nameplate flow.", Tone.GOOD);

  private BypassByRise() {}

  /** What to do; the range has to be known. */
  static Counsel of(BypassFigures figures, Findings findings, UnitChoice units) {
    return figures.riseK().map(rise -> of(rise, figures, findings, units)).orElse(UNKNOWN);
  }

  /** Compared with the expanded uncertainty of the difference (k = 2). */
  private static Counsel of(
      Estimate rise, BypassFigures figures, Findings findings, UnitChoice units) {
    Estimate overLeast = rise.minus(figures.riseAtFlowMaxK().orElseThrow());
    Estimate belowGreatest = figures.riseAtFlowMinK().orElseThrow().minus(rise);
    if (-belowGreatest.value() > belowGreatest.expanded()) {
      return MORE_WATER;
    }
    if (figures.powerRatio().filter(power -> Doubt.below(power, FULL_LOAD)).isPresent()) {
      return partLoad(figures.powerRatio().get(), units);
    }
    if (findings.flags().stream().anyMatch(BypassByRise::meansLessHeat)) {
      return FAULT_FIRST;
    }
    if (-overLeast.value() > overLeast.expanded()) {
      return LESS_WATER;
    }
    boolean nearLeast = overLeast.value() <= overLeast.expanded();
    boolean nearGreatest = belowGreatest.value() <= belowGreatest.expanded();
    if (!nearLeast && !nearGreatest) {
      return WITHIN;
    }
    Estimate end = (nearLeast ? figures.riseAtFlowMaxK() : figures.riseAtFlowMinK()).get();
    return rise.standard() > end.standard() ? pairTooUncertain(rise, findings, units) : NEAR_AN_END;
  }

  private static boolean meansLessHeat(Flag flag) {
    return flag.severity() != Severity.INFO
        && (OF_HEAT.contains(flag.side()) || flag.rule().equals("low-heat"));
  }

  private static Counsel partLoad(Estimate power, UnitChoice units) {
    return new Counsel(
        "The heater draws "
            + units.of(Quantity.RATIO).text(power)
            + " of its nameplate power: at part load the rise is no news of the bypass. Set it with"
            + " the heater at full output, or clip flow-heater.",
        Tone.PLAIN);
  }

  private static Counsel pairTooUncertain(Estimate rise, Findings findings, UnitChoice units) {
    String how =
        findings.zero().isPresent()
            ? "Seat both probes anew under insulation and zero them again: let the water circulate"
                + " for 10 min with the compressor at rest."
            : "Zero it: let the water circulate for 10 min with the compressor at rest.";
    return new Counsel(
        "The probe pair is too uncertain ("
            + Figure.uncertainty(rise, units.of(Quantity.TEMPERATURE_DIFFERENCE).unit())
            + ") to set the bypass by: leave it as it is. "
            + how,
        Tone.PLAIN);
  }
}
