package heatwake.analysis.heat;

import heatwake.analysis.flow.FlowBasis;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Bridging;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import heatwake.analysis.uncertainty.Scatter;
import heatwake.analysis.water.PoolWater;
import heatwake.analysis.zero.Pair;

/**
 * Heat given to the water at every instant, and what is needed to say how uncertain any part of it
 * is.
 *
 * <p>As EN 1434-1 and OIML R 75-1 compute it: volume flow, times density at the flow sensor, times
 * the enthalpy difference. The sensor sits in the cold inlet unless the rig can say otherwise.
 */
public final class HeatStream {
  /** Specific heat of pool water, near enough for a sensitivity. */
  private static final double CP_J_PER_KG_K = 4181;

  private final double stepS;
  private final double[] bridgedFlowM3PerS;
  private final Bridging bridged;
  private final double[] riseK;
  private final double[] heatW;
  private final double capacityJPerM3K;
  private final ProbeUncertainty flowUncertainty;
  private final Pair pair;
  private final double riseNoiseK;
  private final int riseInterval;
  private final double flowNoiseM3PerS;
  private final int flowInterval;

  private HeatStream(Timeline timeline, FlowBasis basis, Pair pair, PoolWater water) {
    this.stepS = timeline.stepS();
    double[] flowM3PerS = basis.flowM3PerS();
    this.flowUncertainty = basis.uncertainty();
    this.pair = pair;
    double[] in = timeline.of(Channel.WATER_IN);
    double[] hot = timeline.of(pair.hot());
    int size = timeline.size();
    riseK = new double[size];
    double[] zeroed = new double[size];
    for (int i = 0; i < size; i++) {
      zeroed[i] = hot[i] - pair.offsetK();
      riseK[i] = zeroed[i] - in[i];
    }
    heatW = water.heatW(flowM3PerS, in, in, zeroed);
    capacityJPerM3K = water.densityKgPerM3(300) * CP_J_PER_KG_K;
    double[] heatedFlow = new double[size];
    for (int i = 0; i < size; i++) {
      if (flowM3PerS[i] == 0) {
        // Standing water carries no heat, whatever the clips show.
        heatW[i] = 0;
      }
      heatedFlow[i] = Double.isNaN(heatW[i]) ? Double.NaN : flowM3PerS[i];
    }
    bridged = Bridging.of(timeline, heatW);
    bridgedFlowM3PerS = Bridging.of(timeline, heatedFlow).values();
    riseInterval =
        Math.max(
            timeline.intervalInstants(Channel.WATER_IN), timeline.intervalInstants(pair.hot()));
    riseNoiseK = Scatter.noise(riseK, riseInterval);
    flowInterval = flowInterval(timeline);
    flowNoiseM3PerS = Scatter.noise(flowM3PerS, flowInterval);
  }

  /** Heat over a run; the timeline must have {@code water-in} and the pair's hot channel. */
  public static HeatStream of(Timeline timeline, FlowBasis basis, Pair pair, PoolWater water) {
    return new HeatStream(timeline, basis, pair, water);
  }

  private static int flowInterval(Timeline timeline) {
    for (Channel channel :
        new Channel[] {Channel.FLOW_HEATER, Channel.FLOW_TOTAL, Channel.PRESSURE_FILTER}) {
      if (timeline.has(channel)) {
        return timeline.intervalInstants(channel);
      }
    }
    return 1;
  }

  /** Heat at every instant, W; NaN where not known. Shared, not to be written to. */
  public double[] heatW() {
    return heatW;
  }

  /** Zeroed difference across the balance, K. Shared, not to be written to. */
  public double[] riseK() {
    return riseK;
  }

  /** Heat with short silences bridged, for sums. */
  Bridging bridged() {
    return bridged;
  }

  /** Time between instants. */
  double stepS() {
    return stepS;
  }

  /** The flow that goes with the heat, bridged like it; NaN where the heat is not known. */
  double flowM3PerS(int i) {
    return bridgedFlowM3PerS[i];
  }

  /** Heat for each kelvin of rise. */
  double capacityWPerK(int i) {
    return bridgedFlowM3PerS[i] * capacityJPerM3K;
  }

  ProbeUncertainty flowUncertainty() {
    return flowUncertainty;
  }

  Pair pair() {
    return pair;
  }

  /** Variance of the rise at one instant, spread so that sums over instants come out right. */
  double riseVariancePerInstant() {
    return riseNoiseK * riseNoiseK * riseInterval;
  }

  double flowVariancePerInstant() {
    return flowNoiseM3PerS * flowNoiseM3PerS * flowInterval;
  }
}
