package heatwake.dashboard.demo.plant.water;

/** Flows that balance the pump against strainer, filter, heater, bypass and return line. */
public final class Hydraulics {
  /** What can hinder the water: multiples of the healthy losses, and of the bypass opening. */
  public record Hindrance(
      double strainer, double filter, double heater, double bypassOpening, double pumpHead) {}

  private static final double SPIN_UP_S = 3;

  private final Circuit circuit;
  private double spin;
  private double totalM3PerS;
  private double heaterM3PerS;
  private double filterPa;

  public Hydraulics(Circuit circuit) {
    this.circuit = circuit;
  }

  /**
   * Moves on.
   *
   * @param drive 1 with the pump switched on, 0 without
   */
  public void step(double dtS, double drive, Hindrance hindrance) {
    spin += (drive - spin) * Math.min(1, dtS / SPIN_UP_S);
    double qTotal = circuit.totalM3PerS();
    double share = circuit.heaterShare();
    double qHeater = qTotal * share;
    double kHeater = circuit.heaterPa() * hindrance.heater() / (qHeater * qHeater);
    double qBypass = qTotal * (1 - share);
    double kBypass =
        circuit.heaterPa() / (qBypass * qBypass) / Math.pow(hindrance.bypassOpening(), 2);
    double admittance = 1 / Math.sqrt(kHeater) + 1 / Math.sqrt(kBypass);
    double kBranches = 1 / (admittance * admittance);
    double q2 = qTotal * qTotal;
    double kReturn =
        (circuit.headPa() - circuit.suctionPa() - circuit.filterPa() - circuit.heaterPa()) / q2;
    double kSuction = circuit.suctionPa() * hindrance.strainer() / q2;
    double kFilter = circuit.filterPa() * hindrance.filter() / q2;
    double kPump = circuit.headPa() * (circuit.shutOffRatio() - 1) / q2;
    double shutOffPa =
        circuit.headPa() * circuit.shutOffRatio() * hindrance.pumpHead() * spin * spin;
    totalM3PerS = Math.sqrt(shutOffPa / (kSuction + kFilter + kBranches + kReturn + kPump));
    if (totalM3PerS < 0.02 * qTotal) {
      totalM3PerS = 0;
    }
    heaterM3PerS = totalM3PerS / Math.sqrt(kHeater) / admittance;
    filterPa = (kFilter + kBranches + kReturn) * totalM3PerS * totalM3PerS;
  }

  /** Water through pump and filter. */
  public double totalM3PerS() {
    return totalM3PerS;
  }

  /** Water through the heater. */
  public double heaterM3PerS() {
    return heaterM3PerS;
  }

  /** Gauge pressure at the filter inlet. */
  public double filterPa() {
    return filterPa;
  }
}
