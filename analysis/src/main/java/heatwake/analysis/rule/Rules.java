package heatwake.analysis.rule;

import heatwake.analysis.rule.airflow.EvaporatorApproach;
import heatwake.analysis.rule.heat.LowCop;
import heatwake.analysis.rule.heat.LowHeat;
import heatwake.analysis.rule.refrigerant.HighPressure;
import heatwake.analysis.rule.refrigerant.LowCharge;
import heatwake.analysis.rule.refrigerant.NoPressureRise;
import heatwake.analysis.rule.water.CondenserApproach;
import heatwake.analysis.rule.water.FallingFlow;
import heatwake.analysis.rule.water.HighHeaterFlow;
import heatwake.analysis.rule.water.LowHeaterFlow;
import java.util.List;

/** The list of rules. */
public final class Rules {
  private static final List<Rule> ALL =
      List.of(
          // Water.
          new LowHeaterFlow(),
          new HighHeaterFlow(),
          new FallingFlow(),
          new CondenserApproach(),
          // Refrigerant.
          new NoPressureRise(),
          new LowCharge(),
          new HighPressure(),
          // Airflow.
          new EvaporatorApproach(),
          // Heat.
          new LowHeat(),
          new LowCop());

  private Rules() {}

  /** Every rule, in the order in which they are documented. */
  public static List<Rule> all() {
    return ALL;
  }
}
