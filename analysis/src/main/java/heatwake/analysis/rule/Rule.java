package heatwake.analysis.rule;

/**
 * One trouble to look for. A rule is stateless, reasons only from the evidence it is given, and
 * stands in one file with its limits, their sources and the sentences a person reads.
 */
public interface Rule {
  /** The fixed id, for instance {@code short-cycling}. */
  String id();

  /** One line: when it is raised. */
  String summary();

  /** Which readings and nameplate figures it needs, in words a technician uses. */
  String needs();

  /** Its limits with units and where each comes from. */
  String limits();

  /** Looks for the trouble. */
  Outcome evaluate(Evidence evidence);
}
