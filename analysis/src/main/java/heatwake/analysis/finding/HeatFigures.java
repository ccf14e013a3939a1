package heatwake.analysis.finding;

import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * Heat and electric energy of a run.
 *
 * @param deliveredJ net heat given to the water from each compressor start until three minutes
 *     after it stops
 * @param deliveredKnown share of that time whose heat is known, 0 to 1; the rest is not in it
 * @param electricJ electric energy over the same time
 * @param electricKnown share of that time whose power is known, 0 to 1; the rest is not in it
 * @param electricTotalJ electric energy over the whole run
 * @param cop delivered over electric where both are known, a ratio of integrals
 * @param zeroOffsetK water-out minus water-in found while water circulates and the compressor rests
 * @param flowWay how the flow through the heater was found, in words; empty if it was not
 * @param flowKnowledge how well it is known; empty if it was not found
 */
public record HeatFigures(
    Optional<Estimate> deliveredJ,
    double deliveredKnown,
    Optional<Estimate> electricJ,
    double electricKnown,
    Optional<Estimate> electricTotalJ,
    Optional<Estimate> cop,
    Optional<Estimate> zeroOffsetK,
    Optional<String> flowWay,
    Optional<FlowKnowledge> flowKnowledge) {

  /**
   * Whether the flow is only what is likely: such a heat is no evidence of what the heater gives.
   */
  public boolean flowIsAssumed() {
    return flowKnowledge.filter(known -> known != FlowKnowledge.MEASURED).isPresent();
  }

  /** Nothing could be computed. */
  public static final HeatFigures NONE =
      new HeatFigures(
          Optional.empty(),
          1,
          Optional.empty(),
          1,
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty());
}
