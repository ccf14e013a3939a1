package heatwake.analysis.finding;

/** How well the flow that heat is computed from is known. */
public enum FlowKnowledge {
  /** By a meter in the heater's water, or by meters and the mixing balance. */
  MEASURED,
  /** All water is measured, but not how much of it the bypass takes. */
  PART_OF_TOTAL,
  /** By no probe at all: what the nameplate allows. */
  ASSUMED
}
