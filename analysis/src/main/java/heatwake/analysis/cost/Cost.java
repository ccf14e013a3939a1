package heatwake.analysis.cost;

import heatwake.analysis.finding.CostFigures;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.site.Rig;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/** Price of the run and of its heat by the tariff of the rig, taken as exact. */
public final class Cost {
  private static final double J_PER_KWH = 3.6e6;

  private Cost() {}

  /** The cost; empty without a tariff. */
  public static Optional<CostFigures> of(Rig rig, HeatFigures heat) {
    return rig.tariff()
        .map(
            tariff ->
                new CostFigures(
                    tariff.currency(),
                    heat.electricTotalJ().map(e -> e.times(tariff.pricePerKWh() / J_PER_KWH)),
                    heat.cop()
                        .filter(cop -> cop.value() > 0)
                        .map(cop -> Estimate.exact(tariff.pricePerKWh()).dividedBy(cop))));
  }
}
