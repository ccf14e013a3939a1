package heatwake.analysis.refrigerant;

import static heatwake.analysis.refrigerant.Ancillary.term;

/**
 * The saturation lines by the equations published for them.
 *
 * <ul>
 *   <li>R-32, R-134a, R-290: vapour-pressure ancillaries of CoolProp 7.2.0, within 0.02 % of the
 *       equations of state: Tillner-Roth and Yokozeki, J. Phys. Chem. Ref. Data 26 (1997) 1273;
 *       Tillner-Roth and Baehr, J. Phys. Chem. Ref. Data 23 (1994) 657; Lemmon, McLinden and
 *       Wagner, J. Chem. Eng. Data 54 (2009) 3141.
 *   <li>R-410A, R-407C: Lemmon, Int. J. Thermophys. 24 (2003) 991-1006; stated uncertainty of
 *       bubble and dew pressure 0.5 %.
 *   <li>R-454B (R-32/R-1234yf 68.9/31.1 by mass): no ancillary is published. It is the line of R-32
 *       times exp of a cubic in T/300 K - 1, fitted to the Helmholtz mixture model with the binary
 *       parameters of Akasaka (Fluid Phase Equilibria, 2013) as CoolProp 7.2.0 computes it, -20 to
 *       70 Cel; the fit is within 0.013 %. Below -20 Cel it is an extrapolation. The newer mixture
 *       model of Bell (J. Phys. Chem. Ref. Data 52, 2023) lies 0.5 to 1.1 % higher for bubble and
 *       0.2 to 0.4 % higher for dew pressure: count on 1 %, which is 0.4 K.
 * </ul>
 */
final class PublishedLines {
  private static final double R410A_TC_K = 344.494;
  private static final double R410A_PC_PA = 4_901_200;
  private static final double R407C_TC_K = 359.345;
  private static final double R407C_PC_PA = 4_631_700;

  private PublishedLines() {}

  /** Where the lines end: some kelvin below the critical point, or where the check values end. */
  static double highestK(Refrigerant refrigerant) {
    return switch (refrigerant) {
      case R410A, R454B -> 343.15;
      case R32 -> 346.15;
      case R134A -> 370.15;
      case R290 -> 367.15;
      case R407C -> 354.15;
    };
  }

  static SaturationLine bubble(Refrigerant refrigerant) {
    return switch (refrigerant) {
      case R32 -> r32();
      case R134A ->
          new Ancillary(
              374.21,
              4_059_280,
              term(0.4331478287291047, 0.845),
              term(-9.090302559074352, 0.99),
              term(2.1476074125217703, 1.14),
              term(-1.557687007603464, 2.651),
              term(-3.5020328972698604, 4.507),
              term(14.958442337201044, 17.235));
      case R290 ->
          new Ancillary(
              369.89,
              4_251_200,
              term(-23.998635747391152, 1.05),
              term(18.313017605233238, 1.084),
              term(-0.42240851966839504, 2.259),
              term(-2.7378298813798962, 4.287),
              term(0.257888414168987, 7.66),
              term(-1.3113462226130785, 18.584));
      case R410A ->
          new Ancillary(
              R410A_TC_K,
              R410A_PC_PA,
              term(-7.2818, 1.0),
              term(2.5093, 1.8),
              term(-3.2695, 2.4),
              term(-2.8022, 4.9));
      case R407C ->
          new Ancillary(
              R407C_TC_K,
              R407C_PC_PA,
              term(0.48722, 0.54),
              term(-6.6959, 0.925),
              term(-1.4165, 2.7),
              term(-2.5109, 4.7));
      case R454B -> r32TimesExp(-0.0732779854, -0.0687957158, -0.0942343177, -0.288667625);
    };
  }

  static SaturationLine dew(Refrigerant refrigerant) {
    return switch (refrigerant) {
      case R32, R134A, R290 -> bubble(refrigerant);
      case R410A ->
          new Ancillary(
              R410A_TC_K,
              R410A_PC_PA,
              term(-7.4411, 1.0),
              term(1.9883, 1.6),
              term(-2.4925, 2.4),
              term(-3.2633, 5.0));
      case R407C ->
          new Ancillary(
              R407C_TC_K,
              R407C_PC_PA,
              term(-0.086077, 0.4),
              term(-6.6364, 0.965),
              term(-2.4648, 3.1),
              term(-3.4776, 5.0));
      case R454B -> r32TimesExp(-0.10846948, 0.00967045952, 0.138457804, 0.475436327);
    };
  }

  private static SaturationLine r32() {
    return new Ancillary(
        351.255,
        5_782_000,
        term(0.019194334673139708, 0.531),
        term(-6.794802163795212, 0.979),
        term(9.276391392786632, 2.203),
        term(-12.327153852761946, 2.382),
        term(28.46579606476374, 3.421),
        term(-28.570870718190093, 3.558));
  }

  private static SaturationLine r32TimesExp(double c0, double c1, double c2, double c3) {
    SaturationLine r32 = r32();
    return tK -> {
      double x = tK / 300 - 1;
      return r32.pressurePa(tK) * Math.exp(c0 + x * (c1 + x * (c2 + x * c3)));
    };
  }
}
