package heatwake.analysis.site;

/**
 * Price of electricity.
 *
 * @param pricePerKWh price of one kWh
 * @param currency as the person writes it
 */
public record Tariff(double pricePerKWh, String currency) {}
