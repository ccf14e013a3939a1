package heatwake.analysis.finding;

import heatwake.analysis.phase.Cycle;
import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * Heat and energy of one compressor cycle, counted as in {@link HeatFigures}: from its start until
 * three minutes after it stops, or the next start if that is sooner. So the cycles add up to the
 * run.
 *
 * @param cycle which cycle
 * @param deliveredJ net heat given to the water
 * @param deliveredKnown share of that time whose heat is known, 0 to 1; the rest is not in it
 * @param electricJ electric energy over the same time
 * @param cop delivered over electric, where both are known
 */
public record CycleFigures(
    Cycle cycle,
    Optional<Estimate> deliveredJ,
    double deliveredKnown,
    Optional<Estimate> electricJ,
    Optional<Estimate> cop) {}
