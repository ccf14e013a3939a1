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
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.ProbeUncertainty;
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
    PhaseGrid phases = evidence.phaseGrid();
    double[] supplied = timeline.of(Channel.VOLTAGE).clone();
    for (int i = 0; i < supplied.length; i++) {
      if (supplied[i] < SWITCHED_OFF * nominal.getAsDouble()) {
        supplied[i] = Double.NaN;
      }
    }
    double running = Stretch.meanWhere(supplied, phases::compressorRuns);
    double resting = Stretch.meanWhere(supplied, i -> !phases.compressorRuns(i));
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
    double nominalV = nominal.getAsDouble();
    text.append(
        String.format(
            Locale.ROOT,
            "nominal %.0f V, allowed %.0f V to %.0f V",
            nominalV,
            (1 - VoltageRange.TOLERANCE) * nominalV,
            (1 + VoltageRange.TOLERANCE) * nominalV));
    double farther =
        Double.isNaN(running) || Math.abs(resting - nominalV) > Math.abs(running - nominalV)
            ? resting
            : running;
    ProbeUncertainty probe = ProbeUncertainty.of(evidence.recording().rig(), Channel.VOLTAGE);
    text.append(reservation(farther, nominalV, probe));
    boolean isWithin = Math.abs(farther - nominalV) <= VoltageRange.TOLERANCE * nominalV;
    return isWithin
        ? pass(timeline.timeMs(timeline.size() - 1), text.toString())
        : notSeen(text.toString());
  }

  /**
   * What has to be said of a supply near or beyond its limit that still is no failure. A rule
   * alarms beyond {@value Doubt#FACTOR} standard uncertainties (guarded rejection, JCGM 106:2012,
   * clause 8.3), so what lies between the limit and that neither passes nor fails.
   */
  private static String reservation(double supplyV, double nominalV, ProbeUncertainty probe) {
    double deviation = supplyV / nominalV - 1;
    double leftV = VoltageRange.TOLERANCE * nominalV - Math.abs(supplyV - nominalV);
    double guardV = Doubt.FACTOR * probe.at(nominalV);
    if (leftV >= guardV) {
      return "";
    }
    String where =
        String.format(
            Locale.ROOT,
            "%.1f %% %s nominal",
            Math.abs(deviation) * 100,
            deviation < 0 ? "below" : "above");
    return leftV >= 0
        ? String.format(Locale.ROOT, "; near the limit: %s, %.0f V inside it", where, leftV)
        : String.format(
            Locale.ROOT,
            "; beyond the limit but not for certain: %s, %.0f V outside it, where the probe leaves"
                + " %.0f V in doubt (3 standard uncertainties); measure with a better meter",
            where,
            -leftV,
            guardV);
  }
}
