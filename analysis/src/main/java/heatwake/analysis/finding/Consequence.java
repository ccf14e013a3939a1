package heatwake.analysis.finding;

/**
 * A flag that another one explains.
 *
 * @param rule id of its rule
 * @param evidence what was seen, in plain words with numbers and units
 */
public record Consequence(String rule, String evidence) {
  /** Stands in a flag's evidence between its own and that of its consequences. */
  public static final String LEAD = ". Follows from it: ";
}
