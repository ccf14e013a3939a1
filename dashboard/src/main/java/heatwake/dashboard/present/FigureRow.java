package heatwake.dashboard.present;

/**
 * A line in a table of figures.
 *
 * @param name what it is
 * @param value value with uncertainty and unit
 * @param remark how it was found, or what it is held against; may be empty
 */
public record FigureRow(String name, String value, String remark) {}
