package heatwake.dashboard.demo.plant.fault;

/**
 * A fault of a certain severity, from a certain moment on.
 *
 * @param startS when it begins, seconds into the run
 */
public record Ailment(Fault fault, Severity severity, double startS) {
  /** A fault that is there from the beginning. */
  public static Ailment of(Fault fault, Severity severity) {
    return new Ailment(fault, severity, 0);
  }

  /**
   * Makes the parts ill.
   *
   * @param timeS seconds into the run
   * @param runS length of the run
   */
  public void bear(Health health, double timeS, double runS) {
    if (timeS >= startS) {
      fault.bear(health, fault.level(severity), new Fault.Onset(timeS - startS, timeS / runS));
    }
  }
}
