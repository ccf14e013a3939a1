package heatwake.analysis.heat;

import heatwake.analysis.electric.ElectricSum;
import heatwake.analysis.electric.Electricity;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.flow.FlowBasis;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Heat and energy of a whole run, and what is missing of them.
 *
 * @param figures the figures
 * @param missing what could not be had, one sentence each
 */
public record Energy(HeatFigures figures, List<String> missing) {
  /** Unknown time shorter than this is not worth a sentence; ours. */
  private static final double WORTH_SAYING_S = 30;

  /** Sums a run. */
  public static Energy of(
      Timeline timeline, Phases phases, WaterSide water, Electricity electricity) {
    List<String> missing = new ArrayList<>();
    HeatBalance balance =
        HeatBalance.of(
                water.heat(),
                electricity.energy(),
                Windows.of(timeline, phases.cycles()),
                timeline.stepS())
            .withUnseen(Silences.whileRunningS(phases));
    if (electricity.energy().isEmpty()) {
      missing.add("electric energy and COP: clip power or energy (or current, with the voltage)");
    }
    if (phases.cycles().isEmpty()) {
      missing.add("delivered heat: the compressor was not seen running");
    }
    if (balance.deliveredJ().isPresent() && balance.heatUnknownS() > WORTH_SAYING_S) {
      missing.add(unknown("heat", balance.heatUnknownS(), balance.seconds()));
    }
    if (balance.electricJ().isPresent() && balance.electricUnknownS() > WORTH_SAYING_S) {
      missing.add(unknown("electric energy", balance.electricUnknownS(), balance.seconds()));
    }
    Silences.missing(phases).ifPresent(missing::add);
    if (balance.deliveredJ().isPresent() && !balance.isTotal()) {
      missing.add(
          "delivered heat and COP: less than half of the time with the heater running is known, so"
              + " no total is given; the steady spans stand");
    }
    Optional<FlowBasis> flow = water.heat().isPresent() ? water.flow() : Optional.empty();
    return new Energy(
        new HeatFigures(
            balance.deliveredJ().filter(known -> balance.isTotal()),
            balance.heatKnown(),
            balance.electricJ(),
            balance.electricKnown(),
            electricity
                .energy()
                .map(stream -> new ElectricSum(stream).add(0, timeline.size()))
                .filter(sum -> !sum.isEmpty())
                .map(ElectricSum::energyJ),
            balance.cop().filter(known -> balance.isTotal()),
            water.zero().map(zero -> zero.offsetK()),
            flow.map(FlowBasis::way),
            flow.map(FlowBasis::knowledge)),
        missing);
  }

  private static String unknown(String what, double seconds, double ofSeconds) {
    return String.format(
        Locale.ROOT,
        "%s: %.0f min of the %.0f min with the heater running are not known and left out",
        what,
        seconds / 60,
        ofSeconds / 60);
  }
}
