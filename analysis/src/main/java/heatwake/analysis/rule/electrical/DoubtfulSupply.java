package heatwake.analysis.rule.electrical;

import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseGrid;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * Supply voltage or current that reads beyond its limit while the heater runs steadily, though not
 * for certain: the rules stay silent (guarded rejection, JCGM 106:2012, clause 8.3), but nobody
 * should read of a sound heater without hearing of it. Of use only where the rules raise nothing.
 */
public final class DoubtfulSupply {
  public static final String NEXT_CHECK =
      "have a licensed electrician measure voltage and current with a better meter";

  private DoubtfulSupply() {}

  /** One sentence for each. */
  public static List<String> words(Evidence evidence) {
    List<String> words = new ArrayList<>();
    OptionalDouble nominal = evidence.recording().rig().heater().voltageV();
    double volts = steady(Channel.VOLTAGE, evidence);
    if (nominal.isPresent()) {
      double deviation = volts / nominal.getAsDouble() - 1;
      if (Math.abs(deviation) > VoltageRange.TOLERANCE) {
        words.add(
            String.format(
                Locale.ROOT,
                "but the supply stands %.1f %% %s nominal %.0f V, beyond the 10 %% that are allowed,"
                    + " though not for certain",
                Math.abs(deviation) * 100,
                deviation < 0 ? "below" : "above",
                nominal.getAsDouble()));
      }
    }
    overNameplateA(evidence)
        .ifPresent(
            amperes ->
                words.add(
                    String.format(
                        Locale.ROOT,
                        "but current is %.1f A where the nameplate allows %.1f A, above what plates"
                            + " are tolerated to be off, though not for certain",
                        amperes,
                        evidence.recording().rig().heater().currentMaxA().orElseThrow())));
    return words;
  }

  /** The heater's own current in steady running, A, where that is above the nameplate's. */
  public static OptionalDouble overNameplateA(Evidence evidence) {
    OptionalDouble limit = evidence.recording().rig().heater().currentMaxA();
    double amperes = steady(Channel.CURRENT, evidence) - evidence.load().amperes().orElse(0);
    return limit.isPresent() && amperes > Overcurrent.PLATE_TOLERANCE * limit.getAsDouble()
        ? OptionalDouble.of(amperes)
        : OptionalDouble.empty();
  }

  /** Mean over steady running; NaN without any. */
  private static double steady(Channel channel, Evidence evidence) {
    Timeline timeline = evidence.timeline();
    PhaseGrid phases = evidence.phaseGrid();
    return Stretch.meanWhere(timeline.of(channel), i -> phases.is(i, Phase.STEADY));
  }
}
