package heatwake.analysis.startup;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.electrical.DoubtfulSupply;
import heatwake.analysis.rule.electrical.Overcurrent;
import heatwake.analysis.site.Heater;
import heatwake.analysis.timeline.Timeline;
import java.util.Locale;
import java.util.OptionalDouble;

/** The running current stays within nameplate and breaker. */
final class CurrentCheck implements Check {
  /** The running current is taken from this long after the start, s: pressures have built up. */
  private static final long SETTLED_MS = 180_000;

  @Override
  public StartupCheck.Item item() {
    return StartupCheck.Item.CURRENT;
  }

  @Override
  public StartupCheck look(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    Heater heater = evidence.recording().rig().heater();
    if (!timeline.has(Channel.CURRENT)) {
      return notMeasured("no current reading");
    }
    if (heater.currentMaxA().isEmpty() && heater.breakerA().isEmpty()) {
      return notMeasured("no heater.current-max and no heater.breaker in the rig");
    }
    if (new Overcurrent().evaluate(evidence) instanceof Outcome.Flagged flagged) {
      Flag flag = flagged.flags().get(0);
      return fail(flag.endMs(), flag.evidence());
    }
    OptionalDouble over = DoubtfulSupply.overNameplateA(evidence);
    if (over.isPresent()) {
      return notSeen(
          text(over.getAsDouble(), OptionalDouble.empty(), heater)
              + "; above it but not for certain: measure with a better meter");
    }
    return evidence.cycles().stream()
        .map(
            cycle -> {
              long stopMs = cycle.stopMs().orElse(evidence.recording().endMs());
              OptionalDouble running =
                  timeline.meanBetween(
                      Channel.CURRENT, cycle.startMs() + SETTLED_MS, stopMs - timeline.stepMs());
              return running.isPresent()
                  ? judged(cycle.startMs() + SETTLED_MS, running.getAsDouble(), evidence)
                  : null;
            })
        .filter(check -> check != null)
        .findFirst()
        .orElseGet(() -> notSeen("the compressor running for more than 3 min"));
  }

  /** Within the nameplate's; whether it is within the breaker's for long is another matter. */
  private StartupCheck judged(long atMs, double runningA, Evidence evidence) {
    Heater heater = evidence.recording().rig().heater();
    OptionalDouble besideA = evidence.load().amperes();
    String text = text(runningA, besideA, heater);
    double ownA = runningA - besideA.orElse(0);
    return heater.breakerA().isPresent()
            && ownA > Overcurrent.CONTINUOUS_SHARE * heater.breakerA().getAsDouble()
        ? notSeen(text + "; more than that for 3 h is too much for it: record that long")
        : pass(atMs, text);
  }

  private static String text(double runningA, OptionalDouble besideA, Heater heater) {
    StringBuilder text = new StringBuilder(60);
    text.append(String.format(Locale.ROOT, "%.1f A running", runningA));
    besideA.ifPresent(
        load -> text.append(String.format(Locale.ROOT, ", %.1f A of it another load's", load)));
    heater
        .currentMaxA()
        .ifPresent(limit -> text.append(String.format(Locale.ROOT, "; nameplate %.1f A", limit)));
    heater
        .breakerA()
        .ifPresent(
            breaker ->
                text.append(
                    String.format(
                        Locale.ROOT,
                        "; 80 %% of the %.0f A breaker is %.1f A",
                        breaker,
                        Overcurrent.CONTINUOUS_SHARE * breaker)));
    return text.toString();
  }
}
