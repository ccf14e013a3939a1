package heatwake.analysis.rule;

import java.util.List;

/** The list of rules. */
public final class Rules {
  private static final List<Rule> ALL = List.of();

  private Rules() {}

  /** Every rule, in the order in which they are documented. */
  public static List<Rule> all() {
    return ALL;
  }
}
