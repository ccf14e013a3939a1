package heatwake.analysis.rule.heat;

import heatwake.analysis.air.IcingAir;
import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.rule.RunningStretch;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The steady running in which ice takes nothing of the heat. Where defrosts are at work, ice takes
 * 10 to 25 % before each (common practice), so a stretch that ends in one, or comes after one,
 * tells of the heater by its beginning; its end tells of the ice.
 */
final class CleanCoil {
  private CleanCoil() {}

  /** Those of some stretches of steady running, in order. */
  static List<Duty> among(List<Duty> judged, List<RunningStretch> running) {
    List<Duty> clean = new ArrayList<>(judged);
    boolean defrostedBefore = false;
    for (RunningStretch stretch : running) {
      if (stretch.defrosted() || defrostedBefore) {
        List<Duty> icing =
            judged.stream()
                .filter(duty -> isWithin(duty, stretch) && mayIce(duty))
                .sorted(Comparator.comparingLong(Duty::startMs))
                .toList();
        clean.removeAll(icing);
        beginning(icing, stretch).ifPresent(clean::add);
      }
      defrostedBefore = stretch.defrosted();
    }
    clean.sort(Comparator.comparingLong(Duty::startMs));
    return List.copyOf(clean);
  }

  /** The first steady running of a stretch, unless it comes so late that ice is there already. */
  private static Optional<Duty> beginning(List<Duty> icing, RunningStretch stretch) {
    return icing.stream()
        .findFirst()
        .filter(first -> first.startMs() - stretch.startMs() <= stretch.endMs() - first.startMs());
  }

  private static boolean isWithin(Duty duty, RunningStretch stretch) {
    return duty.startMs() >= stretch.startMs() && duty.endMs() <= stretch.endMs();
  }

  private static boolean mayIce(Duty duty) {
    return duty.of(DutyFigure.AIR)
        .filter(air -> air.value() < IcingAir.NO_SOUND_COIL_ABOVE_K)
        .isPresent();
  }
}
