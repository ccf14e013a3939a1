package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Spell;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * A compressor that turns, and parts the two sides, but moves next to no gas. Where the water is
 * warmer than the coil it puts the high side above where it stood before the start, so that the
 * rise tells nothing; the heat does. Carnot allows thirty times the work over 10 K of lift, a sound
 * compressor makes half of that (50 to 60 %: common practice), and a fan beside a slow one takes a
 * third of the power at the most.
 */
final class IdleLift {
  /** The lift that no heater at its full speed ever has so small, K. */
  static final double SMALL_LIFT_K = 10;

  /** Half of what a sound compressor and its fan give over such a lift; ours. */
  static final double LEAST_COP = 5;

  /** Sides this far apart beyond doubt have been parted by a compressor that turns, K; ours. */
  private static final double PARTED_K = 1;

  private IdleLift() {}

  /** The steady running in which it shows; nothing else may be on the heater's meter. */
  static Optional<Spell> in(Evidence evidence) {
    if (!evidence.load().shownBy().contains(Channel.POWER) || evidence.load().watts().isPresent()) {
      return Optional.empty();
    }
    List<Duty> judged =
        evidence.duty().stream()
            .filter(
                duty -> duty.has(DutyFigure.POWER, DutyFigure.CONDENSING, DutyFigure.EVAPORATING))
            .flatMap(duty -> withHeat(duty, evidence.steady()).stream())
            .toList();
    return Spell.where(judged, IdleLift::shows);
  }

  /** The heat by a flow between the nameplate's limits will do: it is far too little by any. */
  private static Optional<Duty> withHeat(Duty duty, List<SteadySpan> steady) {
    return steady.stream()
        .filter(span -> span.startMs() == duty.startMs())
        .flatMap(span -> span.heatW().stream())
        .findFirst()
        .map(
            heat -> {
              Map<DutyFigure, Estimate> figures = new EnumMap<>(DutyFigure.class);
              figures.putAll(duty.figures());
              figures.put(DutyFigure.HEAT, heat);
              return new Duty(duty.startMs(), duty.endMs(), figures);
            });
  }

  private static boolean shows(Duty duty) {
    Estimate lift = liftK(duty);
    return duty.of(DutyFigure.POWER).orElseThrow().value() > StartPressures.COMPRESSOR_W
        && lift.value() < SMALL_LIFT_K
        && Doubt.above(lift, PARTED_K)
        && Doubt.below(cop(duty), LEAST_COP);
  }

  /** What was seen, with numbers and units. */
  static String words(Spell spell) {
    Duty mean = spell.mean();
    return String.format(
        Locale.ROOT,
        "Condensing at %s, evaporating at %s, %s apart; the compressor draws %s and the water takes"
            + " up %.1f ± %.1f of it, over %s of steady running; a sound compressor gives ten times"
            + " its power and more over so small a lift",
        Wording.celsius(mean.of(DutyFigure.CONDENSING).orElseThrow().value()),
        Wording.celsius(mean.of(DutyFigure.EVAPORATING).orElseThrow().value()),
        Wording.kelvin(liftK(mean).value()),
        Wording.kilowatts(mean.of(DutyFigure.POWER).orElseThrow().value()),
        cop(mean).value(),
        cop(mean).expanded(),
        Wording.duration(spell.lengthS()));
  }

  private static Estimate liftK(Duty duty) {
    return duty.of(DutyFigure.CONDENSING)
        .orElseThrow()
        .minus(duty.of(DutyFigure.EVAPORATING).orElseThrow());
  }

  private static Estimate cop(Duty duty) {
    return duty.of(DutyFigure.HEAT)
        .orElseThrow()
        .dividedBy(duty.of(DutyFigure.POWER).orElseThrow());
  }
}
