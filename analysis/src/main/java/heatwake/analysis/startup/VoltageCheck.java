package heatwake.analysis.startup;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.electrical.VoltageRange;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.Locale;
import java.util.OptionalDouble;

/** The supply stays within 10 % of nominal, at rest and under load. */
final class VoltageCheck implements Check {
  /** Under this share of nominal the heater is switched off; ours. */
  private static final double SWITCHED_OFF = 0.6;

  @Override
  public StartupCheck.Item item() {
    return StartupCheck.Item.VOLTAGE;
  }

  @Override
  public StartupCheck look(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    OptionalDouble nominal = evidence.recording().rig().heater().voltageV();
    if (!timeline.has(Channel.VOLTAGE)) {
      return notMeasured("no voltage reading");
    }
    if (nominal.isEmpty()) {
      return notMeasured("no heater.voltage in the rig");
    }
    if (new VoltageRange().evaluate(evidence) instanceof Outcome.Flagged flagged) {
      Flag flag = flagged.flags().get(0);
      return fail(flag.endMs(), flag.evidence());
    }
    PhaseGrid phases = PhaseGrid.of(timeline, evidence.phases());
    double[] supplied = timeline.of(Channel.VOLTAGE).clone();
    for (int i = 0; i < supplied.length; i++) {
      if (supplied[i] < SWITCHED_OFF * nominal.getAsDouble()) {
        supplied[i] = Double.NaN;
      }
    }
    double running = meanWhere(supplied, phases, true);
    double resting = meanWhere(supplied, phases, false);
    if (Double.isNaN(running) && Double.isNaN(resting)) {
      return notSeen("a supply at the heater");
    }
    StringBuilder text = new StringBuilder(60);
    if (!Double.isNaN(resting)) {
      text.append(String.format(Locale.ROOT, "%.0f V at rest, ", resting));
    }
    if (!Double.isNaN(running)) {
      text.append(String.format(Locale.ROOT, "%.0f V running, ", running));
    }
    text.append(String.format(Locale.ROOT, "nominal %.0f V", nominal.getAsDouble()));
    return pass(timeline.timeMs(timeline.size() - 1), text.toString());
  }

  private static double meanWhere(double[] values, PhaseGrid phases, boolean running) {
    double[] chosen = values.clone();
    for (int i = 0; i < chosen.length; i++) {
      if (phases.compressorRuns(i) != running) {
        chosen[i] = Double.NaN;
      }
    }
    return Stretch.mean(chosen, 0, chosen.length);
  }
}
