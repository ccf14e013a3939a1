package heatwake.dashboard.score;

import heatwake.analysis.finding.Flag;
import heatwake.dashboard.demo.plant.fault.Severity;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Writes results as text: a line a run, then the figures. */
final class ScoreSheet {
  /** The goal for compressor starts where the draw is read at 1 Hz. */
  private static final double STARTS_WITHIN_S = 10;

  private final List<Result> results;
  private final StringBuilder text = new StringBuilder();

  private ScoreSheet(List<Result> results) {
    this.results = results;
  }

  static String of(String title, List<Result> results) {
    ScoreSheet sheet = new ScoreSheet(results);
    sheet.line("%s: %d runs, %.1f days", title, results.size(), sheet.days(result -> true));
    sheet.line("");
    results.forEach(sheet::run);
    sheet.line("");
    sheet.outcomes();
    sheet.detection();
    sheet.figures();
    sheet.worst();
    sheet.starts();
    sheet.falseFlagsByRule();
    sheet.line(
        "time per run: simulated in %.2f s, analysed in %.2f s (means)",
        results.stream().mapToDouble(Result::playS).average().orElse(0),
        results.stream().mapToDouble(Result::analyseS).average().orElse(0));
    return sheet.text.toString();
  }

  private void run(Result result) {
    String flags =
        result.findings().flags().stream()
            .map(flag -> mark(result, flag) + flag.rule())
            .distinct()
            .collect(Collectors.joining(" "));
    line(
        "%-13s %-74s %-12s %s",
        result.outcome().name().toLowerCase(Locale.ROOT).replace('_', ' '),
        result.one().name(),
        result.findings().verdict().side().id(),
        flags);
    for (Flag flag : result.falseFlags()) {
      line("              not so: %s: %s", flag.rule(), flag.evidence());
    }
  }

  private static String mark(Result result, Flag flag) {
    if (result.one().truth().named().contains(flag.rule())) {
      return "";
    }
    return result.one().truth().expects(flag.rule()) ? "+" : "!";
  }

  private void outcomes() {
    line("%-14s %8s %6s %9s %7s", "outcome", "healthy", "mild", "moderate", "severe");
    for (Outcome outcome : Outcome.values()) {
      Predicate<Result> such = result -> result.outcome() == outcome;
      line(
          "%-14s %8d %6d %9d %7d",
          outcome.name().toLowerCase(Locale.ROOT).replace('_', ' '),
          count(such.and(healthy())),
          count(such.and(severity(Severity.MILD))),
          count(such.and(severity(Severity.MODERATE))),
          count(such.and(severity(Severity.SEVERE))));
    }
    line("");
  }

  private void detection() {
    for (Severity severity : Severity.values()) {
      share(
          severity.name().toLowerCase(Locale.ROOT) + " faults named",
          severity(severity),
          Result::detected);
    }
    Predicate<Result> serious = severity(Severity.MODERATE).or(severity(Severity.SEVERE));
    share("moderate and severe faults named (goal 95 %)", serious, Result::detected);
    share("wrong side, moderate and severe (goal under 5 %)", serious, Result::wrongSide);
    share("healthy runs with a false flag (goal 0)", healthy(), r -> !r.falseFlags().isEmpty());
    double flags = results.stream().filter(healthy()).mapToInt(r -> r.falseFlags().size()).sum();
    line("false alarms per healthy day: %.3f", flags / Math.max(1e-9, days(healthy())));
    share(
        "fault runs with a flag that is not so",
        healthy().negate(),
        r -> !r.falseFlags().isEmpty());
    line("");
  }

  private void figures() {
    line(
        "%-14s %5s %9s %9s %9s %10s   (goal 93 to 97 %%)",
        "figure", "runs", "mean", "median", "95th", "covered");
    figure("heat", Result::heat);
    figure("electric", Result::electric);
    figure("COP", Result::cop);
    figure("steady heat", Result::steadyHeat);
    line("(errors in per cent of the truth, probe errors included; median and 95th of their size)");
    line("");
  }

  private void figure(String name, Function<Result, Optional<Result.Compared>> which) {
    List<Result.Compared> all =
        results.stream()
            .filter(ScoreSheet::probesSound)
            .map(which)
            .flatMap(Optional::stream)
            .toList();
    if (all.isEmpty()) {
      line("%-14s none", name);
      return;
    }
    double[] sizes =
        all.stream().mapToDouble(one -> 100 * Math.abs(one.relativeError())).sorted().toArray();
    line(
        "%-14s %5d %+9.2f %9.2f %9.2f %8.1f %%",
        name,
        all.size(),
        all.stream().mapToDouble(one -> 100 * one.relativeError()).average().orElse(0),
        sizes[sizes.length / 2],
        sizes[(int) (0.95 * (sizes.length - 1))],
        100.0 * all.stream().filter(Result.Compared::covered).count() / all.size());
  }

  /** Broken probes make no promise about uncertainty. */
  private static boolean probesSound(Result result) {
    return result.one().night().troubles().isEmpty() && result.one().night().clockSteps().isEmpty();
  }

  private void worst() {
    line("heat furthest from the truth, in stated expanded uncertainties:");
    results.stream()
        .filter(ScoreSheet::probesSound)
        .filter(result -> result.heat().isPresent())
        .sorted(Comparator.comparingDouble((Result result) -> -result.heat().get().inExpanded()))
        .limit(8)
        .forEach(
            result ->
                line(
                    "  %.1f (%+.1f %%)  %s  %s",
                    result.heat().get().inExpanded(),
                    100 * result.heat().get().relativeError(),
                    result.one().name(),
                    result.findings().heat().flowWay().orElse("")));
    line("");
  }

  private void starts() {
    double[] errors =
        results.stream()
            .filter(ScoreSheet::probesSound)
            .filter(result -> result.one().night().probes().get(0).intervalS() <= 2)
            .flatMap(result -> result.startErrorsS().stream())
            .mapToDouble(Double::doubleValue)
            .sorted()
            .toArray();
    if (errors.length > 0) {
      long within = Arrays.stream(errors).filter(error -> error <= STARTS_WITHIN_S).count();
      line(
          "compressor starts sampled at 1 or 2 s: %d, found within 10 s: %.1f %%, median off by %.0f s",
          errors.length, 100.0 * within / errors.length, errors[errors.length / 2]);
    }
    results.stream()
        .filter(ScoreSheet::probesSound)
        .filter(result -> result.one().night().probes().get(0).intervalS() <= 2)
        .forEach(this::lateStarts);
    line(
        "cycles found that were none: %d",
        results.stream().filter(ScoreSheet::probesSound).mapToInt(Result::surplusCycles).sum());
    results.stream()
        .filter(ScoreSheet::probesSound)
        .filter(result -> result.surplusCycles() > 0)
        .forEach(result -> line("  %d: %s", result.surplusCycles(), result.one().name()));
  }

  private void lateStarts(Result result) {
    double[] off =
        result.startErrorsS().stream()
            .mapToDouble(Double::doubleValue)
            .filter(error -> error > STARTS_WITHIN_S)
            .sorted()
            .toArray();
    if (off.length > 0) {
      line(
          "  %d of %d off by more, from %.0f s to %.0f s: %s",
          off.length,
          result.startErrorsS().size(),
          off[0],
          off[off.length - 1],
          result.one().name());
    }
  }

  private void falseFlagsByRule() {
    Map<String, Long> counts =
        results.stream()
            .flatMap(result -> result.falseFlags().stream())
            .collect(Collectors.groupingBy(Flag::rule, TreeMap::new, Collectors.counting()));
    line("flags that were not so, by rule: %s", counts);
  }

  private void share(String label, Predicate<Result> among, Predicate<Result> which) {
    long all = count(among);
    long hits = count(among.and(which));
    line("%s: %d of %d (%.1f %%)", label, hits, all, all == 0 ? 0 : 100.0 * hits / all);
  }

  private long count(Predicate<Result> which) {
    return results.stream().filter(which).count();
  }

  private double days(Predicate<Result> which) {
    return results.stream().filter(which).mapToDouble(Result::days).sum();
  }

  private static Predicate<Result> healthy() {
    return result -> result.one().truth().isHealthy();
  }

  private static Predicate<Result> severity(Severity severity) {
    return result -> result.one().truth().severity().equals(Optional.of(severity));
  }

  private void line(String format, Object... values) {
    text.append(String.format(Locale.ROOT, format, values)).append('\n');
  }
}
