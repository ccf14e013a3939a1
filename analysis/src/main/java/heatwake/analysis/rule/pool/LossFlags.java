package heatwake.analysis.rule.pool;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.pool.MostLoss;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Set;

/**
 * What is told of a pool that loses most of its heat.
 *
 * @param delivered heat that the heater gave, J
 * @param loss what of it the pool did not keep, J
 */
record LossFlags(String rule, Evidence evidence, Estimate delivered, Estimate loss) {

  private static String knownPart(double known) {
    String percent = Wording.percent(known);
    return percent.equals("100 %") ? "" : " in the " + percent + " of its time that is known";
  }

  /** What the heater gave and the pool lost; {@code share} is the one of the other. */
  Flag flag(Estimate share) {
    String model =
        evidence
            .pool()
            .lossModelW()
            .map(
                watts ->
                    "; evaporation, convection and radiation account for "
                        + Wording.kilowatts(watts.value()))
            .orElse("");
    double runS = (evidence.recording().endMs() - evidence.recording().startMs()) / 1e3;
    return new Flag(
        rule,
        Side.POOL,
        Severity.WARNING,
        evidence.recording().startMs(),
        evidence.recording().endMs(),
        "The heater gave "
            + Wording.kilowattHours(delivered)
            + knownPart(evidence.heat().deliveredKnown())
            + (evidence.heat().flowIsAssumed() ? " (its flow is not measured but assumed)" : "")
            + ", the pool lost "
            + Wording.kilowattHours(loss)
            + " ("
            + Wording.percent(share)
            + " of it), "
            + Wording.kilowatts(loss.value() / runS)
            + " on average"
            + model,
        List.of(
            "pool left uncovered, wind over the water",
            "cold make-up water, or a leak that is topped up",
            "pipes in wet ground, waterfall or spill-over running",
            "pool volume in the rig too small"),
        "Cover the pool for a night and compare; read the water meter of the make-up line.",
        Set.of(Channel.WATER_POOL, Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER));
  }

  /** The same flag where no pool can lose so much: then heat or volume err. */
  Flag beyond(MostLoss most, Estimate share) {
    Flag flag = flag(share);
    return new Flag(
        rule,
        Side.MEASUREMENT,
        flag.severity(),
        flag.startMs(),
        flag.endMs(),
        flag.evidence()
            + ". Air, wind and sky cannot take more than "
            + Wording.kilowatts(most.totalW().value())
            + " from an open pool of "
            + Math.round(most.areaM2())
            + " m2, so the heat or the pool's volume is wrong",
        List.of(
            "pool volume or surface in the rig too small",
            "flow meter with the wrong scaling or unit",
            "much cold make-up water, or a large leak that is topped up"),
        "Measure the pool and compare with the rig; compare the flow meter with a bucket or a second"
            + " meter; read the water meter of the make-up line.",
        flag.channels());
  }
}
