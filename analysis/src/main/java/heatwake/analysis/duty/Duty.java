package heatwake.analysis.duty;

import heatwake.analysis.uncertainty.Estimate;
import java.util.Collection;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The heater at duty over a stretch of steady running. What is not measured is absent.
 *
 * @param startMs first instant, UTC milliseconds
 * @param endMs last instant
 * @param figures mean figures with their uncertainties
 */
public record Duty(long startMs, long endMs, Map<DutyFigure, Estimate> figures) {

  /** A figure this close to the nameplate's is right, whatever its uncertainty; ours. */
  public static final double CLOSE_TO_PLATE = 0.08;

  public Duty {
    Map<DutyFigure, Estimate> copy = new EnumMap<>(DutyFigure.class);
    copy.putAll(figures);
    figures = Collections.unmodifiableMap(copy);
  }

  /** A figure, if it is known. */
  public Optional<Estimate> of(DutyFigure figure) {
    return Optional.ofNullable(figures.get(figure));
  }

  /** Whether every one of these figures is known. */
  public boolean has(DutyFigure... wanted) {
    return figures.keySet().containsAll(List.of(wanted));
  }

  /** Length of the stretch, at least one second so that it can weigh. */
  public double durationS() {
    return Math.max(1, (endMs - startMs) / 1e3);
  }

  /**
   * Mean of several stretches, weighed by their length. Probes err alike in all of them, so the
   * uncertainty is the mean of theirs and does not shrink with their number (GUM F.1.2.3: fully
   * correlated inputs).
   *
   * @throws IllegalArgumentException if there are none
   */
  public static Duty meanOf(Collection<Duty> stretches) {
    if (stretches.isEmpty()) {
      throw new IllegalArgumentException("no stretch to take the mean of");
    }
    Map<DutyFigure, Estimate> means = new EnumMap<>(DutyFigure.class);
    for (DutyFigure figure : DutyFigure.values()) {
      double weight = 0;
      double value = 0;
      double standard = 0;
      for (Duty one : stretches) {
        Estimate known = one.figures.get(figure);
        if (known != null) {
          weight += one.durationS();
          value += known.value() * one.durationS();
          standard += known.standard() * one.durationS();
        }
      }
      if (weight > 0) {
        means.put(figure, new Estimate(value / weight, standard / weight));
      }
    }
    return new Duty(
        stretches.stream().mapToLong(Duty::startMs).min().orElseThrow(),
        stretches.stream().mapToLong(Duty::endMs).max().orElseThrow(),
        means);
  }
}
