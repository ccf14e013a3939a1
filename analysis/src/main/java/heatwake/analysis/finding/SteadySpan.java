package heatwake.analysis.finding;

import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A stretch in which the heater ran steadily, with its mean figures. What could not be computed is
 * empty.
 *
 * @param startMs first instant, UTC milliseconds
 * @param endMs last instant
 * @param heatW heat given to the water
 * @param powerW electric power
 * @param cop heat over power
 * @param riseK zeroed temperature rise of the water through the heater
 * @param flowM3PerS water through the heater
 * @param heaterShare part of the total flow that goes through the heater, 0 to 1
 * @param waterInK entering water
 * @param airK entering air (outdoor air where the coil inlet is not measured)
 * @param expectedHeatW heat the nameplate promises at these conditions
 * @param expectedPowerW power the nameplate promises at these conditions
 * @param ratio heat over expected heat
 * @param condensingK condensing temperature
 * @param evaporatingK evaporating temperature
 * @param superheatK suction superheat
 * @param subcoolingK liquid subcooling
 * @param condenserApproachK condensing temperature minus leaving water temperature
 * @param evaporatorApproachK entering air temperature minus evaporating temperature
 * @param condensateKgPerS water taken out of the air
 */
public record SteadySpan(
    long startMs,
    long endMs,
    Optional<Estimate> heatW,
    Optional<Estimate> powerW,
    Optional<Estimate> cop,
    Optional<Estimate> riseK,
    Optional<Estimate> flowM3PerS,
    Optional<Estimate> heaterShare,
    OptionalDouble waterInK,
    OptionalDouble airK,
    Optional<Estimate> expectedHeatW,
    Optional<Estimate> expectedPowerW,
    Optional<Estimate> ratio,
    OptionalDouble condensingK,
    OptionalDouble evaporatingK,
    OptionalDouble superheatK,
    OptionalDouble subcoolingK,
    OptionalDouble condenserApproachK,
    OptionalDouble evaporatorApproachK,
    OptionalDouble condensateKgPerS) {}
