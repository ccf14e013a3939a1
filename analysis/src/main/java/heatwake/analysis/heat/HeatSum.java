package heatwake.analysis.heat;

import heatwake.analysis.timeline.Bridging;
import heatwake.analysis.uncertainty.Estimate;

/**
 * Heat summed over instants, with its standard uncertainty by the GUM (JCGM 100:2008, 5.1): errors
 * of flow, pair and properties stay the same from instant to instant and add up, over bridged ones
 * as well, since these lie between measured ones; scatter adds up by squares.
 */
public final class HeatSum {
  /**
   * Properties of the water: place of the flow sensor (0.09 % per 3 K), salt and pressure not known
   * exactly, IF97 itself.
   */
  static final double PROPERTIES_SHARE = 0.001;

  private final HeatStream stream;
  private int instants;
  private double heatW;
  private double bridgedW;
  private double capacityWPerK;
  private double perFlowJPerM3;
  private double capacitySquared;
  private double perFlowSquared;

  public HeatSum(HeatStream stream) {
    this.stream = stream;
  }

  /** Adds instant {@code i}, if its heat is known or bridged; says whether it is. */
  public boolean add(int i) {
    double heat = stream.bridged().values()[i];
    if (Double.isNaN(heat)) {
      return false;
    }
    instants++;
    double flow = stream.flowM3PerS(i);
    if (flow == 0) {
      return true;
    }
    double capacity = stream.capacityWPerK(i);
    double perFlow = heat / flow;
    heatW += heat;
    capacityWPerK += capacity;
    perFlowJPerM3 += perFlow;
    if (stream.bridged().isBridged(i)) {
      bridgedW += heat;
    } else {
      capacitySquared += capacity * capacity;
      perFlowSquared += perFlow * perFlow;
    }
    return true;
  }

  /** Adds instants from {@code from} up to but not including {@code to}. */
  public HeatSum add(int from, int to) {
    for (int i = from; i < to; i++) {
      add(i);
    }
    return this;
  }

  public boolean isEmpty() {
    return instants == 0;
  }

  /** Time that was summed over. */
  public double seconds() {
    return instants * stream.stepS();
  }

  /** Energy. */
  public Estimate energyJ() {
    double dt = stream.stepS();
    double flow =
        Math.hypot(
            stream.flowUncertainty().share() * heatW,
            stream.flowUncertainty().absolute() * perFlowJPerM3);
    double pair =
        Math.hypot(stream.pair().systematicK() * capacityWPerK, stream.pair().gainShare() * heatW);
    double properties = PROPERTIES_SHARE * heatW;
    double random =
        stream.riseVariancePerInstant() * capacitySquared
            + stream.flowVariancePerInstant() * perFlowSquared;
    double bridged = Bridging.SHARE * bridgedW;
    double variance =
        flow * flow + pair * pair + properties * properties + random + bridged * bridged;
    return new Estimate(heatW * dt, Math.sqrt(variance) * dt);
  }

  /** Mean heat over the time summed. */
  public Estimate meanW() {
    return energyJ().times(1 / seconds());
  }
}
