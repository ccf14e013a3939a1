package heatwake.analysis.flow;

import heatwake.analysis.finding.FlowKnowledge;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.Optional;

/**
 * The flow that heat is computed from. Heat is this flow times the enthalpy gained from {@code
 * water-in} to {@code hot}: through the heater alone, or of all water where only the mixture at the
 * return is known (the mixing balance makes both the same heat).
 *
 * @param way how it was found, in words
 * @param knowledge how well it is known
 * @param flowM3PerS on the grid of the timeline, NaN where not known; shared, not to be written to
 * @param uncertainty systematic standard uncertainty
 * @param hot the warm end of the balance
 * @param meter the probe that tells it; empty where none does
 */
@SuppressWarnings("ArrayRecordComponent") // a large array, shared on purpose
public record FlowBasis(
    String way,
    FlowKnowledge knowledge,
    double[] flowM3PerS,
    ProbeUncertainty uncertainty,
    Channel hot,
    Optional<Channel> meter) {

  /** Whether meters tell it, not what is usual. */
  public boolean isMeasured() {
    return knowledge == FlowKnowledge.MEASURED;
  }
}
