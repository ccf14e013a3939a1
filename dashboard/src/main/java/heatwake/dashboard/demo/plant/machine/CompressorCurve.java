package heatwake.dashboard.demo.plant.machine;

/** How well a compressor fills and compresses, over its pressure ratio. */
final class CompressorCurve {
  /** Part of the electric work that stays in the refrigerant. */
  static final double KEPT = 0.94;

  private CompressorCurve() {}

  /** Volumetric efficiency. */
  static double filling(HeaterDesign.Compressor compressor, double ratio) {
    return Math.max(0.3, 0.97 - compressor.clearance() * (ratio - 1));
  }

  /** Isentropic efficiency, motor included. */
  static double efficiency(HeaterDesign.Compressor compressor, double ratio) {
    double off = ratio - compressor.bestRatio();
    return Math.max(0.3 * compressor.efficiency(), compressor.efficiency() - 0.045 * off * off);
  }
}
