package heatwake.analysis.site;

/** One point of the pump curve: the head (as a pressure) that the pump gives at a flow. */
public record PumpPoint(double flowM3PerS, double headPa) {}
