package heatwake.analysis.site;

/** How the heater's compressor is driven, as its nameplate or manual says. */
public enum CompressorSpeed {
  /** It runs at full speed or not at all: heat below the nameplate's is never a choice. */
  FIXED,
  /** An inverter drives it: it may run slower near the set temperature or by a quiet setting. */
  VARIABLE
}
