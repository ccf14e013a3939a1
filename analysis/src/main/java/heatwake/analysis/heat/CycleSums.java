package heatwake.analysis.heat;

import heatwake.analysis.electric.Electricity;
import heatwake.analysis.finding.CycleFigures;
import heatwake.analysis.heat.Windows.Window;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;

/** Heat and energy of each compressor cycle; no heat of a cycle of which too little is known. */
public final class CycleSums {
  private CycleSums() {}

  /** Sums every cycle of a run, in order of time. */
  public static List<CycleFigures> of(
      Timeline timeline, List<Cycle> cycles, WaterSide water, Electricity electricity) {
    List<Window> windows = Windows.of(timeline, cycles);
    List<CycleFigures> figures = new ArrayList<>(cycles.size());
    for (int k = 0; k < cycles.size(); k++) {
      HeatBalance balance =
          HeatBalance.of(
              water.heat(), electricity.energy(), List.of(windows.get(k)), timeline.stepS());
      figures.add(
          new CycleFigures(
              cycles.get(k),
              balance.deliveredJ().filter(known -> balance.isTotal()),
              balance.heatKnown(),
              balance.electricJ(),
              balance.cop().filter(known -> balance.isTotal())));
    }
    return figures;
  }
}
