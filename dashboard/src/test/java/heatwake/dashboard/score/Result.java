package heatwake.dashboard.score;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.CycleFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.dashboard.demo.plant.Truth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What the analysis made of a case, beside the truth. */
record Result(
    Case one, Findings findings, Truth truth, Outcome outcome, double playS, double analyseS) {

  /** Below this a span is no heating. */
  private static final double HEATS_W = 500;

  /** An estimate and what it should have been. */
  record Compared(Estimate estimate, double truth) {
    double relativeError() {
      return estimate.value() / truth - 1;
    }

    /** Distance from the truth over the stated expanded uncertainty. */
    double inExpanded() {
      return Math.abs(estimate.value() - truth) / Math.max(1e-9, estimate.expanded());
    }

    boolean covered() {
      return inExpanded() <= 1;
    }
  }

  static Result of(Case one) {
    long begin = System.nanoTime();
    SimulatedRecording played = SimulatedRecording.of(one);
    long middle = System.nanoTime();
    Findings findings = Analysis.of(played.recording());
    long end = System.nanoTime();
    Case shown = one.as(played.truth());
    return new Result(
        shown,
        findings,
        played.truth(),
        Outcome.of(shown.truth(), findings),
        (middle - begin) / 1e9,
        (end - middle) / 1e9);
  }

  /** Flags that nothing in the truth explains. */
  List<Flag> falseFlags() {
    return findings.flags().stream().filter(flag -> !one.truth().expects(flag.rule())).toList();
  }

  boolean detected() {
    return findings.flags().stream().anyMatch(flag -> one.truth().named().contains(flag.rule()));
  }

  /** A verdict that blames somebody who has nothing to do with it. */
  boolean wrongSide() {
    Side side = findings.verdict().side();
    return side != Side.UNDECIDED && !one.truth().sides().contains(side);
  }

  double days() {
    return one.night().site().runS() / 86_400;
  }

  Optional<Compared> heat() {
    return compare(findings.heat().deliveredJ(), truth.deliveredJ());
  }

  Optional<Compared> electric() {
    return compare(findings.heat().electricJ(), truth.electricJ());
  }

  Optional<Compared> cop() {
    return compare(findings.heat().cop(), truth.deliveredJ() / truth.electricJ());
  }

  /**
   * The longest steady span's heat: one a run, since spans of a run share their systematic error.
   */
  Optional<Compared> steadyHeat() {
    return findings.steady().stream()
        .filter(span -> span.heatW().isPresent())
        .filter(span -> truth.meanHeatW(seconds(span, true), seconds(span, false)) > HEATS_W)
        .max(Comparator.comparingLong(span -> span.endMs() - span.startMs()))
        .map(
            span ->
                new Compared(
                    span.heatW().get(),
                    truth.meanHeatW(seconds(span, true), seconds(span, false))));
  }

  private double seconds(SteadySpan span, boolean start) {
    return ((start ? span.startMs() : span.endMs()) - one.night().startMs()) / 1e3;
  }

  private Optional<Compared> compare(Optional<Estimate> estimate, double true_) {
    return true_ > 0 ? estimate.map(value -> new Compared(value, true_)) : Optional.empty();
  }

  /** How far each true compressor start lies from the nearest one found, s; 1e9 for none. */
  List<Double> startErrorsS() {
    List<Double> errors = new ArrayList<>();
    for (double trueS : truth.startsS()) {
      double nearest = 1e9;
      for (CycleFigures figures : findings.cycles()) {
        Cycle cycle = figures.cycle();
        double found = (cycle.startMs() - one.night().startMs()) / 1e3;
        nearest = Math.min(nearest, Math.abs(found - trueS));
      }
      errors.add(nearest);
    }
    return errors;
  }

  /** Cycles found beyond those that were. */
  int surplusCycles() {
    return Math.max(0, findings.cycles().size() - truth.startsS().size());
  }
}
