package heatwake.analysis.finding;

import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a person who sets the bypass needs: the water through the heater and what the nameplate asks
 * for, and the rise and where it belongs.
 *
 * @param atMs the moment of the figures, the last one with the compressor running; UTC milliseconds
 * @param heaterShare part of the total flow that goes through the heater then, 0 to 1
 * @param flowM3PerS water through the heater then, where meters tell it
 * @param flowMinM3PerS the least that the nameplate asks for
 * @param flowMaxM3PerS the most that it allows
 * @param riseK rise through the heater then
 * @param expectedHeatW heat the nameplate promises at the conditions of that moment
 * @param riseAtFlowMaxK the rise that the expected heat gives at the nameplate's greatest flow: a
 *     smaller one means too much water
 * @param riseAtFlowMinK the rise that the expected heat gives at the nameplate's least flow: a
 *     greater one means too little water
 * @param powerRatio power drawn then over the nameplate's at these conditions: well below one the
 *     heater runs at part load, and its rise is smaller at any flow
 */
public record BypassFigures(
    long atMs,
    Optional<Estimate> heaterShare,
    Optional<Estimate> flowM3PerS,
    OptionalDouble flowMinM3PerS,
    OptionalDouble flowMaxM3PerS,
    Optional<Estimate> riseK,
    Optional<Estimate> expectedHeatW,
    Optional<Estimate> riseAtFlowMaxK,
    Optional<Estimate> riseAtFlowMinK,
    Optional<Estimate> powerRatio) {}
