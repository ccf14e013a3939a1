package heatwake.analysis.water;

import heatwake.analysis.quantity.OutOfRangeException;

/**
 * What dissolved salt adds to the density and the specific heat of water: the equations of UNESCO
 * technical papers in marine science 44 (Fofonoff and Millard, 1983), density by Millero and
 * Poisson (1981), specific heat by Millero, Perron and Desnoyers (1973), at atmospheric pressure, 0
 * to 40 Cel, up to 42 g/kg. {@link PoolWater} goes on with them above 40 Cel, where they stay
 * smooth and the correction small.
 *
 * <p>They are for sea salt. The salt of a pool is nearly all NaCl; of equal mass its effect differs
 * by about a tenth (from memory: a 0.5 % NaCl solution at 20 Cel is 0.36 % denser than water, sea
 * salt gives 0.38 %). At 3 to 4 g/kg the whole correction of density times specific heat is 0.17 to
 * 0.23 %, so take {@value #UNCERTAINTY_SHARE} of the correction as its standard uncertainty.
 */
public final class Salt {
  /** Most salt the equations cover, as mass fraction. */
  public static final double HIGHEST_KG_PER_KG = 0.042;

  /** Standard uncertainty of the correction as a share of the correction itself; ours. */
  public static final double UNCERTAINTY_SHARE = 0.1;

  /** Absolute (mass) salinity over practical salinity, IOC/SCOR/IAPSO TEOS-10 manual (2010). */
  private static final double ABSOLUTE_PER_PRACTICAL = 35.16504 / 35;

  private final double practical;
  private final double practicalToOneAndHalf;

  /**
   * Salt at a mass fraction.
   *
   * @throws OutOfRangeException below zero or above {@value #HIGHEST_KG_PER_KG}
   */
  Salt(double kgPerKg) {
    OutOfRangeException.check("salt in the water", kgPerKg, "kg/kg", 0, HIGHEST_KG_PER_KG);
    practical = kgPerKg * 1000 / ABSOLUTE_PER_PRACTICAL;
    practicalToOneAndHalf = practical * Math.sqrt(practical);
  }

  /** Added density, UNESCO 44 equation of state at one atmosphere. */
  double addedDensityKgPerM3(double tK) {
    double t = tK - Water.LOWEST_K;
    double first = 0.824493 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
    double second = -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6);
    return first * practical + second * practicalToOneAndHalf + 4.8314e-4 * practical * practical;
  }

  /** Added specific heat (negative), UNESCO 44 at one atmosphere. */
  double addedCpJPerKgK(double tK) {
    double t = tK - Water.LOWEST_K;
    double first = -7.643575 + t * (0.1072763 - t * 1.38385e-3);
    double second = 0.1770383 + t * (-4.07718e-3 + t * 5.148e-5);
    return first * practical + second * practicalToOneAndHalf;
  }

  /**
   * Added enthalpy counted from 0 Cel: the integral of the added specific heat. Only differences at
   * one salinity have a meaning.
   */
  double addedEnthalpyJPerKg(double tK) {
    double t = tK - Water.LOWEST_K;
    double first = t * (-7.643575 + t * (0.1072763 / 2 - t * 1.38385e-3 / 3));
    double second = t * (0.1770383 + t * (-4.07718e-3 / 2 + t * 5.148e-5 / 3));
    return first * practical + second * practicalToOneAndHalf;
  }
}
