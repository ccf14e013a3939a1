package heatwake.analysis.series;

/** Something a person typed during a run. */
public record Note(long timeMs, String text) {}
