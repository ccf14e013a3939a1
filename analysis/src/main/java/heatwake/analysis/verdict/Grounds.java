package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.Symptom;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Reason;
import heatwake.analysis.finding.Side;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.series.Recording;
import heatwake.analysis.site.Heater;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a verdict rests on, and what would decide it, in the order in which it is told. */
final class Grounds {
  private static final int MOST_REASONS = 6;

  /** Which cause it fits, and what shows that most. */
  private static final int LEAST_SYMPTOMS = 2;

  private final Evidence evidence;
  private final FlagSides sides;

  Grounds(Evidence evidence, FlagSides sides) {
    this.evidence = evidence;
    this.sides = sides;
  }

  /**
   * The flags of the side, its heaviest first, then the symptoms, then the flags of others: a
   * second cause is told before the last of the symptoms of the first.
   */
  List<Reason> reasons(List<Flag> flags, Side side) {
    List<Flag> heaviestFirst = new ArrayList<>(flags);
    heaviestFirst.sort(Comparator.comparingDouble(FlagWeight::of).reversed());
    List<Reason> ofSide =
        heaviestFirst.stream()
            .filter(flag -> flag.side() == side)
            .<Reason>map(Reason.Blames::new)
            .toList();
    List<Reason> beside = beside(heaviestFirst, side);
    int room = MOST_REASONS - ofSide.size() - beside.size();
    Stream<Reason> symptoms =
        heaviestFirst.stream()
            .filter(flag -> flag.side() == side && sides.isByTable(flag))
            .findFirst()
            .stream()
            .flatMap(flag -> symptoms(flag, side).stream())
            .<Reason>map(Reason.Sentence::new)
            .limit(Math.max(LEAST_SYMPTOMS, room));
    Set<String> said = new HashSet<>();
    return Stream.of(ofSide.stream(), symptoms, beside.stream())
        .flatMap(reasons -> reasons)
        .filter(one -> said.add(one.text()))
        .limit(MOST_REASONS)
        .toList();
  }

  /** What is said although it does not speak for the side. */
  private List<Reason> beside(List<Flag> heaviestFirst, Side side) {
    List<Reason> beside = new ArrayList<>();
    if (heaviestFirst.stream().noneMatch(sides::isHanded)) {
      sides.heatDoubt().ifPresent(why -> beside.add(new Reason.Sentence("also " + why)));
    }
    heaviestFirst.stream()
        .filter(flag -> flag.side() != side)
        .forEach(flag -> beside.add(new Reason.Beside(flag)));
    return beside;
  }

  private List<String> symptoms(Flag flag, Side side) {
    Duty duty = DutyDuring.of(flag, evidence);
    Heater heater = evidence.recording().rig().heater();
    Attribution attribution = sides.attribution(flag);
    List<String> texts = new ArrayList<>();
    texts.add(
        "fits "
            + (side == Side.UNDECIDED
                ? attribution.rivals().stream()
                    .map(Cause::words)
                    .collect(
                        Collectors.joining(" or ", attribution.likeliest().words() + " or ", ""))
                : attribution.likeliest().words()));
    attribution.grades().entrySet().stream()
        .filter(grade -> grade.getValue() != 0)
        .filter(grade -> grade.getKey() != Symptom.HEAT && grade.getKey() != Symptom.COP)
        .sorted(
            Comparator.comparingDouble(
                (Map.Entry<Symptom, Double> grade) -> -Math.abs(grade.getValue())))
        .forEach(
            grade ->
                grade
                    .getKey()
                    .figure(duty, heater)
                    .ifPresent(figure -> texts.add(SymptomText.of(grade.getKey(), figure))));
    return texts;
  }

  /**
   * What would tell the causes of the first such flag of the side apart, then what the flags ask
   * for, those of the side first.
   */
  List<String> whatWouldDecide(List<Flag> flags, Side side) {
    List<String> texts = new ArrayList<>();
    Recording run = evidence.recording();
    ToKnow toKnow = new ToKnow(run.series().keySet(), run.rig().heater());
    flags.stream()
        .filter(flag -> flag.side() == side && sides.isByTable(flag))
        .findFirst()
        .ifPresent(flag -> texts.addAll(WouldDecide.of(sides.attribution(flag), toKnow)));
    Stream.concat(
            flags.stream().filter(flag -> flag.side() == side),
            flags.stream().filter(flag -> flag.side() != side))
        .limit(2)
        .forEach(flag -> texts.add(flag.nextCheck()));
    return texts.stream().distinct().toList();
  }
}
