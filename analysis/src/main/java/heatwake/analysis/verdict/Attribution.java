package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.finding.Side;
import heatwake.analysis.rule.Flooding;
import heatwake.analysis.rule.HotSuction;
import heatwake.analysis.site.Heater;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Which side a loss of heat or COP is on, by the reasoning table.
 *
 * @param ranking causes by how well they agree with the symptoms, the best first
 * @param grades how far each known symptom lies outside its band, -1 to 1
 */
public record Attribution(List<Ranked> ranking, Map<Symptom, Double> grades) {
  /** Agreement a cause must reach for its side to be named; ours. */
  private static final double LEAST_AGREEMENT = 0.6;

  /** Lead over the best cause of any other side for the side to be named; ours. */
  private static final double LEAST_LEAD = 0.5;

  /** Lead at which the odds are nine to one; ours. */
  private static final double SURE_LEAD = 1.5;

  public Attribution {
    ranking = List.copyOf(ranking);
    Map<Symptom, Double> ordered = new EnumMap<>(Symptom.class);
    ordered.putAll(grades);
    grades = Collections.unmodifiableMap(ordered);
  }

  /** A cause with its agreement. */
  public record Ranked(Cause cause, double agreement) {}

  /** Holds the figures of a stretch of running against the table. */
  public static Attribution of(Duty duty, Heater heater) {
    Map<Symptom, Double> grades = new EnumMap<>(Symptom.class);
    for (Symptom symptom : Symptom.values()) {
      OptionalDouble grade = symptom.grade(duty, heater);
      grade.ifPresent(known -> grades.put(symptom, known));
    }
    if (HotSuction.shows(duty)) {
      // Gas that came in hot has its superheat from there, not from the coil.
      grades.remove(Symptom.SUPERHEAT);
    }
    if (Flooding.shows(duty)) {
      // The liquid that is missing there stands in the coil: one observation, not two.
      grades.computeIfPresent(Symptom.SUBCOOLING, (symptom, grade) -> Math.max(0, grade));
    }
    return of(grades);
  }

  /** Holds grades of symptoms against the table. */
  public static Attribution of(Map<Symptom, Double> grades) {
    List<Ranked> ranking = new ArrayList<>();
    for (Cause cause : Cause.values()) {
      ranking.add(new Ranked(cause, agreement(cause, grades)));
    }
    ranking.sort(Comparator.comparingDouble(Ranked::agreement).reversed());
    return new Attribution(ranking, grades);
  }

  private static double agreement(Cause cause, Map<Symptom, Double> grades) {
    double sum = cause.frequency();
    for (Map.Entry<Symptom, Expectation> cell : cause.row().entrySet()) {
      Double grade = grades.get(cell.getKey());
      if (grade != null) {
        sum +=
            cause == Cause.MISLED_HEAT && isLittleAirByRightHeat(cell.getKey(), grades)
                ? grade
                : cell.getValue().agreement(grade);
      }
    }
    return sum;
  }

  /**
   * Whether air is little by a heat that is not low, or by the one promised where none is measured.
   * The air is worked out from the heat: to make half of it, half of the heat would have to be
   * missing, so a heat that misleads does not explain it.
   */
  private static boolean isLittleAirByRightHeat(Symptom symptom, Map<Symptom, Double> grades) {
    return symptom == Symptom.AIR_FLOW
        && grades.get(symptom) < 0
        && grades.getOrDefault(Symptom.HEAT, 0.0) >= 0;
  }

  /** The cause that agrees best. */
  public Cause likeliest() {
    return ranking.get(0).cause();
  }

  /**
   * The best causes of other sides that agree hardly less than the likeliest; where all agree much
   * less, the best of them alone.
   */
  public List<Cause> rivals() {
    List<Cause> rivals = new ArrayList<>();
    Set<Side> sides = EnumSet.of(likeliest().side());
    for (Ranked ranked : ranking) {
      boolean near = ranking.get(0).agreement() - ranked.agreement() < LEAST_LEAD;
      if ((near || rivals.isEmpty()) && sides.add(ranked.cause().side())) {
        rivals.add(ranked.cause());
      }
    }
    return rivals;
  }

  /** Lead of the likeliest cause over the best cause of another side. */
  public double lead() {
    Side side = likeliest().side();
    return ranking.stream()
        .filter(ranked -> ranked.cause().side() != side)
        .mapToDouble(ranked -> ranking.get(0).agreement() - ranked.agreement())
        .min()
        .orElse(0);
  }

  /** The side, or undecided where no cause agrees well or two sides agree alike. */
  public Side side() {
    Map<Symptom, Expectation> row = likeliest().row();
    boolean shows =
        row.entrySet().stream()
            .anyMatch(cell -> speaksUp(cell.getValue(), grades.get(cell.getKey())));
    return shows && ranking.get(0).agreement() >= LEAST_AGREEMENT && lead() >= LEAST_LEAD
        ? likeliest().side()
        : Side.UNDECIDED;
  }

  /** Whether a symptom shows and agrees; silence alone names nobody. */
  private static boolean speaksUp(Expectation expected, Double grade) {
    return grade != null && grade != 0 && expected.agreement(grade) > 0;
  }

  /** How sure the side is, 0 to 1: even odds at no lead, nine to one at a clear one. */
  public double confidence() {
    return 1 / (1 + Math.pow(9, -lead() / SURE_LEAD));
  }
}
