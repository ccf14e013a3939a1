package heatwake.analysis.compare;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * What belies a run's steady heat or COP, so that nothing can be concluded from it: figures that
 * cannot be, trouble that was given to the measurement, and probes accused while the heater ran
 * steadily. An offset of the pair is subtracted, and gaps and clock steps are left out of the
 * figures: they belie nothing.
 *
 * @param heat why the heat is in doubt, one sentence each; empty if it is not
 * @param cop why the COP is in doubt; a doubted heat makes a doubted COP
 */
record RunDoubt(List<String> heat, List<String> cop) {
  private static final Set<String> ACCUSING =
      Set.of("probes-swapped", "probe-slipped", "probe-stuck", "probe-fault");

  private static final Set<String> HARMLESS = Set.of("probe-offset", "data-gap", "clock-step");

  RunDoubt {
    heat = List.copyOf(heat);
    cop = List.copyOf(cop);
  }

  static RunDoubt of(Findings findings) {
    List<String> heat = new ArrayList<>();
    findings.heatDoubt().ifPresent(why -> heat.add("heat and COP: " + why));
    findings.flags().stream()
        .filter(flag -> beliesHeat(flag, findings))
        .map(flag -> "heat and COP: " + flag.ownEvidence())
        .forEach(heat::add);
    List<String> cop = new ArrayList<>(heat);
    findings.flags().stream()
        .filter(flag -> !beliesHeat(flag, findings))
        .filter(flag -> accuses(flag, electric(findings), findings, SteadySpan::cop))
        .map(flag -> "COP: " + flag.ownEvidence())
        .forEach(cop::add);
    return new RunDoubt(named(heat, findings), named(cop, findings));
  }

  private static List<String> named(List<String> sentences, Findings findings) {
    return sentences.stream()
        .distinct()
        .map(text -> "run " + findings.run() + ", not to be believed: " + text)
        .toList();
  }

  private static boolean beliesHeat(Flag flag, Findings findings) {
    if (ACCUSING.contains(flag.rule())) {
      return accuses(flag, ofHeat(findings), findings, SteadySpan::heatW);
    }
    return flag.side() == Side.MEASUREMENT && !HARMLESS.contains(flag.rule());
  }

  /** Whether a flag accuses one of the channels while a figure was taken from it. */
  private static boolean accuses(
      Flag flag,
      Set<Channel> channels,
      Findings findings,
      Function<SteadySpan, Optional<Estimate>> figure) {
    Predicate<SteadySpan> during =
        span -> flag.startMs() < span.endMs() && flag.endMs() > span.startMs();
    return ACCUSING.contains(flag.rule())
        && flag.severity() != Severity.INFO
        && flag.channels().stream().anyMatch(channels::contains)
        && findings.steady().stream()
            .filter(span -> figure.apply(span).isPresent())
            .anyMatch(during);
  }

  /** The pair, what the flow comes from, and the air that the heat is held against. */
  private static Set<Channel> ofHeat(Findings findings) {
    Set<Channel> channels = EnumSet.of(Channel.WATER_IN, Channel.WATER_OUT, Channel.HUMIDITY_IN);
    channels.add(first(findings, Channel.AIR_IN, Channel.AIR_AMBIENT));
    Channel meter = first(findings, Channel.FLOW_HEATER, Channel.FLOW_TOTAL);
    channels.add(meter);
    if (!findings.channels().containsKey(Channel.FLOW_HEATER)) {
      channels.add(Channel.WATER_RETURN);
    }
    if (!findings.channels().containsKey(meter)) {
      channels.add(Channel.PRESSURE_FILTER);
    }
    return channels;
  }

  private static Set<Channel> electric(Findings findings) {
    Channel meter = first(findings, Channel.POWER, Channel.ENERGY);
    return findings.channels().containsKey(meter)
        ? EnumSet.of(meter)
        : EnumSet.of(Channel.CURRENT, Channel.VOLTAGE);
  }

  /** The channel that is taken where both are recorded. */
  private static Channel first(Findings findings, Channel preferred, Channel other) {
    return findings.channels().containsKey(preferred) ? preferred : other;
  }
}
