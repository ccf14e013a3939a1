package heatwake.analysis.finding;

import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * What a person who sets the bypass needs: where the rise stands and where it belongs.
 *
 * @param atMs the moment of the figures, the last one with the compressor running; UTC milliseconds
 * @param heaterShare part of the total flow that goes through the heater then, 0 to 1
 * @param riseK rise through the heater then
 * @param expectedHeatW heat the nameplate promises at the conditions of that moment
 * @param riseAtFlowMaxK the rise that the expected heat gives at the nameplate's greatest flow: a
 *     smaller one means too much water
 * @param riseAtFlowMinK the rise that the expected heat gives at the nameplate's least flow: a
 *     greater one means too little water
 */
public record BypassFigures(
    long atMs,
    Optional<Estimate> heaterShare,
    Optional<Estimate> riseK,
    Optional<Estimate> expectedHeatW,
    Optional<Estimate> riseAtFlowMaxK,
    Optional<Estimate> riseAtFlowMinK) {}
