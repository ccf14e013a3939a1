package heatwake.analysis.rule.measurement;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Wording;
import java.util.List;
import java.util.Set;

/** What is told of a clip that is off its pipe or line. */
final class SlippedFlag {
  private final String rule;
  private final long endOfRunMs;

  /**
   * @param endOfRunMs UTC milliseconds
   */
  SlippedFlag(String rule, long endOfRunMs) {
    this.rule = rule;
    this.endOfRunMs = endOfRunMs;
  }

  /**
   * A clip off its pipe.
   *
   * @param startMs from when, UTC milliseconds
   */
  Flag of(OffPipe off, long startMs) {
    return flag(off.accused(), Severity.WARNING, startMs, off.endMs(), off.words());
  }

  /** A clip off its line, to the end of the run. */
  Flag of(LineSlip slip) {
    return flag(slip.line(), Severity.WARNING, slip.startMs(), endOfRunMs, slip.words());
  }

  /** It is back on its pipe and its time is left out: nothing is left to mend. */
  Flag of(Reclip brief) {
    return flag(brief.accused(), Severity.INFO, brief.startMs(), brief.endMs(), brief.words());
  }

  /** One that shows at rest, to the end of the run. */
  Flag of(Channel accused, SlipAtRest slip) {
    return flag(accused, Severity.WARNING, slip.startMs(), endOfRunMs, slip.words());
  }

  /** A probe stays off its pipe until somebody straps it on again, and nobody says when. */
  Flag of(Slip slip) {
    Channel accused = slip.accused();
    boolean isInlet = accused == Channel.WATER_IN;
    PipeBlock before = slip.before();
    PipeBlock last = slip.after().get(slip.after().size() - 1);
    Channel partner = PipePair.partnerOf(accused);
    double then = isInlet ? before.inK() : before.outK();
    double now = isInlet ? last.inK() : last.outK();
    double partnerMoved = isInlet ? last.outK() - before.outK() : last.inK() - before.inK();
    return flag(
        accused,
        Severity.WARNING,
        slip.startMs(),
        endOfRunMs,
        accused.id()
            + " went from "
            + Wording.celsius(then)
            + " to "
            + Wording.celsius(now)
            + (Double.isNaN(last.airK())
                ? ""
                : ", towards the air at " + Wording.celsius(last.airK()) + ",")
            + " while "
            + partner.id()
            + " moved by "
            + Wording.kelvin(partnerMoved));
  }

  private Flag flag(Channel accused, Severity severity, long startMs, long endMs, String evidence) {
    return new Flag(
        rule,
        Side.MEASUREMENT,
        severity,
        startMs,
        endMs,
        evidence,
        List.of(
            "clip or strap came loose, or insulation fell off",
            "probe pulled out of its pocket",
            "water on the probe's cable or in its plug"),
        "Look at the "
            + accused.id()
            + " probe: press it to clean pipe, strap and insulate it, then compare again.",
        Set.of(accused));
  }
}
