package heatwake.analysis.rule;

import heatwake.analysis.rule.airflow.AirRecirculation;
import heatwake.analysis.rule.airflow.EvaporatorApproach;
import heatwake.analysis.rule.airflow.Frosting;
import heatwake.analysis.rule.control.RestartTooSoon;
import heatwake.analysis.rule.control.RunsPastSetpoint;
import heatwake.analysis.rule.control.ShortCycling;
import heatwake.analysis.rule.electrical.NoCompressor;
import heatwake.analysis.rule.electrical.Overcurrent;
import heatwake.analysis.rule.electrical.VoltageRange;
import heatwake.analysis.rule.heat.LowCop;
import heatwake.analysis.rule.heat.LowHeat;
import heatwake.analysis.rule.measurement.ClockStep;
import heatwake.analysis.rule.measurement.DataGap;
import heatwake.analysis.rule.measurement.ProbeFault;
import heatwake.analysis.rule.measurement.ProbeOffset;
import heatwake.analysis.rule.measurement.ProbeSlipped;
import heatwake.analysis.rule.measurement.ProbeStuck;
import heatwake.analysis.rule.measurement.ProbesSwapped;
import heatwake.analysis.rule.pool.HeatLoss;
import heatwake.analysis.rule.pool.SetpointUnreachable;
import heatwake.analysis.rule.refrigerant.HighPressure;
import heatwake.analysis.rule.refrigerant.LowCharge;
import heatwake.analysis.rule.refrigerant.NoPressureRise;
import heatwake.analysis.rule.water.CondenserApproach;
import heatwake.analysis.rule.water.FallingFlow;
import heatwake.analysis.rule.water.HighHeaterFlow;
import heatwake.analysis.rule.water.LowHeaterFlow;
import heatwake.analysis.rule.water.NoFlow;
import heatwake.analysis.rule.water.PumpHours;
import java.util.List;

/** The list of rules. */
public final class Rules {
  private static final List<Rule> ALL =
      List.of(
          // Water and pump.
          new NoFlow(),
          new PumpHours(),
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
          new Frosting(),
          new AirRecirculation(),
          // Heat.
          new LowHeat(),
          new LowCop(),
          // Pool.
          new HeatLoss(),
          new SetpointUnreachable(),
          // Control.
          new ShortCycling(),
          new RestartTooSoon(),
          new RunsPastSetpoint(),
          // Electric.
          new NoCompressor(),
          new Overcurrent(),
          new VoltageRange(),
          // Measurement.
          new ProbesSwapped(),
          new ProbeSlipped(),
          new ProbeStuck(),
          new ProbeFault(),
          new ProbeOffset(),
          new DataGap(),
          new ClockStep());

  private Rules() {}

  /** Every rule, in the order in which they are documented. */
  public static List<Rule> all() {
    return ALL;
  }
}
