package heatwake.analysis.water;

import heatwake.analysis.approximation.Polynomial;
import heatwake.analysis.quantity.OutOfRangeException;

/**
 * The water of one pool at one absolute pressure and salinity, quick enough for every reading of a
 * night: enthalpy and density by polynomials through IAPWS-IF97 region 1 (plus {@link Salt}), made
 * once by {@link #of}. Density and the slope of the enthalpy stay within one part in a million of
 * the equations.
 *
 * <p>Holds from 0 to {@value #HIGHEST_CEL} Cel (boiling at the least pressure is at 81 Cel).
 * Methods for one reading throw {@link OutOfRangeException} beyond; the one for a whole run gives
 * NaN there, so that a bad reading stays one bad reading.
 */
public final class PoolWater {
  /** Upper end of the temperatures covered. */
  public static final double HIGHEST_CEL = 70;

  /**
   * Heat per volume and kelvin of fresh pool water from 26 to 28 Cel, metered cold, at 0.16 MPa
   * absolute (IAPWS-IF97): near enough for guesses of a flow, within 1 % from 10 to 40 Cel and to 5
   * g/kg of salt.
   */
  public static final double USUAL_HEAT_COEFFICIENT_J_PER_M3_K = 4.167e6;

  /** Least absolute pressure: an open pool at about 5500 m. */
  public static final double LOWEST_PA = 50e3;

  /** Greatest absolute pressure: the heat-meter standards' 16 bar and a margin. */
  public static final double HIGHEST_PA = 2e6;

  private static final int ENTHALPY_DEGREE = 10;
  private static final int DENSITY_DEGREE = 7;
  private static final double SAME_TEMPERATURE_K = 1e-6;

  private final double saltKgPerKg;
  private final double pressurePa;
  private final Salt salt;
  private final Polynomial enthalpy;
  private final Polynomial density;

  private PoolWater(double saltKgPerKg, double pressurePa) {
    this.saltKgPerKg = saltKgPerKg;
    this.pressurePa = pressurePa;
    this.salt = new Salt(saltKgPerKg);
    double highestK = Water.LOWEST_K + HIGHEST_CEL;
    this.enthalpy =
        Polynomial.through(
            tK -> If97.enthalpyJPerKg(tK, pressurePa) + salt.addedEnthalpyJPerKg(tK),
            Water.LOWEST_K,
            highestK,
            ENTHALPY_DEGREE);
    this.density =
        Polynomial.through(
            tK -> If97.densityKgPerM3(tK, pressurePa) + salt.addedDensityKgPerM3(tK),
            Water.LOWEST_K,
            highestK,
            DENSITY_DEGREE);
  }

  /**
   * Water of a salinity at an absolute pressure. Make one per pool and keep it: it costs some
   * microseconds. From an open pool to 16 bar the heat coefficient changes by 0.03 %.
   *
   * @param saltKgPerKg salt as mass fraction, zero for fresh water
   * @param pPa absolute pressure on the heater's water side
   * @throws OutOfRangeException salt above {@value Salt#HIGHEST_KG_PER_KG}, or pressure outside
   *     {@value #LOWEST_PA} to {@value #HIGHEST_PA} Pa
   */
  public static PoolWater of(double saltKgPerKg, double pPa) {
    OutOfRangeException.check("absolute water pressure", pPa, "Pa", LOWEST_PA, HIGHEST_PA);
    return new PoolWater(saltKgPerKg, pPa);
  }

  /** Salt as mass fraction. */
  public double saltKgPerKg() {
    return saltKgPerKg;
  }

  /** Absolute pressure. */
  public double pressurePa() {
    return pressurePa;
  }

  /** Whether the equations hold at a temperature; false for NaN. */
  public static boolean covers(double tK) {
    return tK >= Water.LOWEST_K && tK <= Water.LOWEST_K + HIGHEST_CEL;
  }

  /** Specific enthalpy; only differences at one salinity have a meaning. */
  public double enthalpyJPerKg(double tK) {
    check(tK);
    return enthalpy.at(tK);
  }

  /** Density. */
  public double densityKgPerM3(double tK) {
    check(tK);
    return density.at(tK);
  }

  /** Specific heat at constant pressure, by the equations themselves. */
  public double cpJPerKgK(double tK) {
    check(tK);
    return If97.cpJPerKgK(tK, pressurePa) + salt.addedCpJPerKgK(tK);
  }

  /**
   * Heat coefficient of EN 1434-1 and OIML R 75-1 at this pressure, J/(m3 K); see {@link
   * Water#heatCoefficientJPerM3K}.
   */
  public double heatCoefficientJPerM3K(double hotK, double coldK, double meterK) {
    double difference = hotK - coldK;
    double perKg =
        Math.abs(difference) < SAME_TEMPERATURE_K
            ? cpJPerKgK(hotK)
            : (enthalpyJPerKg(hotK) - enthalpyJPerKg(coldK)) / difference;
    return densityKgPerM3(meterK) * perKg;
  }

  /**
   * Heat that a flow takes up between two temperatures: volume flow times density at the flow
   * sensor, times the enthalpy difference. Negative where the water cools.
   *
   * @param flowM3PerS volume flow as the sensor sees it
   * @param meterK temperature at the flow sensor
   * @param inK entering temperature
   * @param outK leaving temperature
   */
  public double heatW(double flowM3PerS, double meterK, double inK, double outK) {
    return flowM3PerS * densityKgPerM3(meterK) * (enthalpyJPerKg(outK) - enthalpyJPerKg(inK));
  }

  /**
   * {@link #heatW(double, double, double, double)} for a whole run: NaN wherever an input is NaN or
   * a temperature is not covered. All arrays have one length.
   */
  public double[] heatW(double[] flowM3PerS, double[] meterK, double[] inK, double[] outK) {
    double[] heat = new double[flowM3PerS.length];
    for (int i = 0; i < heat.length; i++) {
      heat[i] =
          covers(meterK[i]) && covers(inK[i]) && covers(outK[i])
              ? flowM3PerS[i] * density.at(meterK[i]) * (enthalpy.at(outK[i]) - enthalpy.at(inK[i]))
              : Double.NaN;
    }
    return heat;
  }

  private static void check(double tK) {
    if (!covers(tK)) {
      throw new OutOfRangeException(
          "pool water temperature",
          tK,
          "K",
          Water.LOWEST_K,
          Water.LOWEST_K + HIGHEST_CEL,
          "liquid water only");
    }
  }
}
