package heatwake.analysis.finding;

import heatwake.analysis.uncertainty.Estimate;
import java.util.Optional;

/**
 * What the heat costs by the tariff of the rig.
 *
 * @param currency as the person writes it
 * @param total price of the electric energy of the whole run
 * @param perKWhHeat price of one kWh of heat given to the water
 */
public record CostFigures(
    String currency, Optional<Estimate> total, Optional<Estimate> perKWhHeat) {}
