package heatwake.analysis.startup;

import heatwake.analysis.finding.ProbeZero;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.measurement.ProbeOffset;
import java.util.Locale;
import java.util.Optional;

/** Inlet and outlet probe agree while water circulates with the compressor at rest. */
final class ProbeZeroCheck implements Check {
  @Override
  public StartupCheck.Item item() {
    return StartupCheck.Item.PROBE_ZERO;
  }

  @Override
  public StartupCheck look(Evidence evidence) {
    if (!evidence.timeline().has(Channel.WATER_IN) || !evidence.timeline().has(Channel.WATER_OUT)) {
      return notMeasured("no water-in and water-out pair");
    }
    Optional<ProbeZero> found = evidence.zero();
    if (found.isEmpty()) {
      return notSeen("let water circulate for 10 min with the compressor at rest");
    }
    ProbeZero zero = found.get();
    if (!ProbeOffset.tells(zero)) {
      return notSeen(
          "water-out less water-in "
              + Wording.kelvin(zero.offsetK())
              + " at rest, too uncertain to tell; let water circulate for 10 min with the"
              + " compressor at rest, and see whether the difference is the same at every rest");
    }
    long atMs = zero.spans().get(0).endMs();
    double allowedK = ProbeOffset.allowedK(zero);
    String text =
        "water-out less water-in "
            + Wording.kelvin(zero.offsetK())
            + String.format(Locale.ROOT, " at rest; up to %.2f K is allowed", allowedK);
    return Math.abs(zero.offsetK().value()) <= allowedK ? pass(atMs, text) : fail(atMs, text);
  }
}
