package heatwake.dashboard.demo.plant.machine;

/**
 * A refrigerant of the simulated heater. Saturation pressures and vapour density are own fits of
 * the form {@code ln y = a + b/T + c ln T + d T} to CoolProp 8.0.0, -35 to 65 Cel (pressure within
 * 0.13 %) and -35 to 32 Cel (density within 0.13 %); enthalpies are cubics in Celsius over -35 to
 * 57 Cel on saturated liquid at 0 Cel (within 1 kJ/kg).
 */
@SuppressWarnings("ImmutableEnumChecker") // its records hold nothing but doubles
public enum Fluid {
  R410A(
      "R-410A",
      new LogFit(126.79333894, -5047.36276453, -18.42586617, 0.03165920869),
      new LogFit(132.86479651, -5195.62292245, -19.50810054, 0.03363393746),
      new LogFit(358.92337427, -10166.48817781, -62.88119615, 0.12623293519),
      new Cubic(3.6346933e-05, 0.0025631864, 1.5033401508, -0.0285856),
      new Cubic(-5.77298e-05, -0.0036317105, 0.328912505, 221.442),
      1.075,
      1150,
      1550),
  R32(
      "R-32",
      new LogFit(113.99248649, -4729.78326594, -16.15975564, 0.02778094087),
      new LogFit(113.99248649, -4729.78326594, -16.15975564, 0.02778094087),
      new LogFit(300.8290132, -8833.83134867, -52.45905215972, 0.10581273239),
      new Cubic(3.461e-05, 0.00266057829, 1.7337966315, -0.0315409678),
      new Cubic(-5.37379655e-05, -0.00480342084, 0.20512874226, 315.350148),
      1.183,
      1260,
      1590),
  R134A(
      "R-134a",
      new LogFit(117.34382885578, -5326.98282484, -16.4094456087, 0.0249050062173),
      new LogFit(117.34382885578, -5326.98282484, -16.4094456087, 0.0249050062173),
      new LogFit(219.51572195, -7557.59478085, -37.10487947817, 0.06948844235),
      new Cubic(8.653e-06, 0.00140392325, 1.34117392876, -0.0076045981),
      new Cubic(-1.3197e-05, -0.00115631594, 0.58672466449, 198.61221158),
      1.032,
      920,
      1120),
  R290(
      "R-290",
      new LogFit(86.22123341, -3976.57491929, -11.361001598939, 0.018826121335),
      new LogFit(86.22123341, -3976.57491929, -11.361001598939, 0.018826121335),
      new LogFit(187.33239963, -6207.80287248, -32.01703098237, 0.06350873834),
      new Cubic(2.06135e-05, 0.00379445997, 2.49599676941, -0.0151065748),
      new Cubic(-2.795865e-05, -0.00213645357, 1.11066863037, 374.8898745),
      1.03,
      1800,
      2230),
  R407C(
      "R-407C",
      new LogFit(96.441603565, -4416.32381277, -12.958069878977, 0.020762354266),
      new LogFit(148.428044409, -5937.38846953, -22.010275816379, 0.035977759284),
      new LogFit(279.61354081, -8790.46079606, -48.0748971297, 0.09243775055),
      new Cubic(1.6854743e-05, 0.00178376854, 1.41313511916, -0.014640438),
      new Cubic(-2.40561e-05, -0.00201882645, 0.49242280598, 209.40139377),
      1.053,
      980,
      1210),
  R454B(
      "R-454B",
      new LogFit(115.460570792, -4786.04267012635, -16.39223733983, 0.027688071676),
      new LogFit(138.57653804, -5341.84772952898, -20.54338418358, 0.035617444840),
      new LogFit(380.67663311, -10846.39897779, -66.554346647, 0.13022367297),
      new Cubic(3.37969730e-05, 0.00202953015, 1.61812505634, 0.0361344448),
      new Cubic(-4.978281e-05, -0.00293967529, 0.33375323026, 261.23178961),
      1.11,
      1180,
      1480);

  /** Share of the two-phase glide, from bubble to dew, at which the coil's mean lies. */
  private static final double MEAN_EVAPORATING = 0.6;

  private static final double MEAN_CONDENSING = 0.5;

  private final String designation;
  private final LogFit bubble;
  private final LogFit dew;
  private final LogFit vapourDensity;
  private final Cubic liquidKJPerKg;
  private final Cubic vapourKJPerKg;
  private final double polytropicExponent;
  private final double suctionVapourHeat;
  private final double dischargeVapourHeat;

  Fluid(
      String designation,
      LogFit bubble,
      LogFit dew,
      LogFit vapourDensity,
      Cubic liquidKJPerKg,
      Cubic vapourKJPerKg,
      double polytropicExponent,
      double suctionVapourHeat,
      double dischargeVapourHeat) {
    this.designation = designation;
    this.bubble = bubble;
    this.dew = dew;
    this.vapourDensity = vapourDensity;
    this.liquidKJPerKg = liquidKJPerKg;
    this.vapourKJPerKg = vapourKJPerKg;
    this.polytropicExponent = polytropicExponent;
    this.suctionVapourHeat = suctionVapourHeat;
    this.dischargeVapourHeat = dischargeVapourHeat;
  }

  /** ISO 817 designation. */
  public String designation() {
    return designation;
  }

  /** Absolute pressure at which liquid begins to boil. */
  public double bubblePa(double celsius) {
    return Math.exp(bubble.ln(celsius));
  }

  /** Absolute pressure at which vapour begins to condense. */
  public double dewPa(double celsius) {
    return Math.exp(dew.ln(celsius));
  }

  /** Absolute pressure in an evaporator whose mean temperature is given. */
  double evaporatingPa(double meanC) {
    return mixed(meanC, MEAN_EVAPORATING);
  }

  /** Absolute pressure in a condenser whose mean temperature is given. */
  double condensingPa(double meanC) {
    return mixed(meanC, MEAN_CONDENSING);
  }

  private double mixed(double meanC, double dewShare) {
    return Math.exp((1 - dewShare) * bubble.ln(meanC) + dewShare * dew.ln(meanC));
  }

  /** Dew temperature above the evaporator's mean temperature, from the glide. */
  double dewAboveMeanK(double meanC) {
    return glideK(meanC) * (1 - MEAN_EVAPORATING);
  }

  /** Bubble temperature below the condenser's mean temperature, from the glide. */
  double bubbleBelowMeanK(double meanC) {
    return glideK(meanC) * MEAN_CONDENSING;
  }

  private double glideK(double celsius) {
    double kelvin = celsius + 273.15;
    double slope = -dew.b() / (kelvin * kelvin) + dew.c() / kelvin + dew.d();
    return (bubble.ln(celsius) - dew.ln(celsius)) / slope;
  }

  /** Density of saturated vapour, kg/m3. */
  double vapourDensity(double celsius) {
    return Math.exp(vapourDensity.ln(celsius));
  }

  /** Enthalpy of saturated liquid, J/kg. */
  double liquidEnthalpy(double celsius) {
    return 1e3 * liquidKJPerKg.at(celsius);
  }

  /** Enthalpy of saturated vapour, J/kg. */
  double vapourEnthalpy(double celsius) {
    return 1e3 * vapourKJPerKg.at(celsius);
  }

  /** Isentropic work in J/kg from a suction pressure and specific volume to a pressure ratio. */
  double isentropicWork(double suctionPa, double volumeM3PerKg, double pressureRatio) {
    double n = polytropicExponent;
    return n / (n - 1) * suctionPa * volumeM3PerKg * (Math.pow(pressureRatio, (n - 1) / n) - 1);
  }

  /** Specific heat of superheated vapour at the suction, J/(kg K). */
  double suctionVapourHeat() {
    return suctionVapourHeat;
  }

  /** Specific heat of superheated vapour at the discharge, J/(kg K). */
  double dischargeVapourHeat() {
    return dischargeVapourHeat;
  }

  private record LogFit(double a, double b, double c, double d) {
    double ln(double celsius) {
      double kelvin = celsius + 273.15;
      return a + b / kelvin + c * Math.log(kelvin) + d * kelvin;
    }
  }

  private record Cubic(double a, double b, double c, double d) {
    double at(double x) {
      return ((a * x + b) * x + c) * x + d;
    }
  }
}
