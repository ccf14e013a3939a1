package heatwake.analysis.sensor;

/**
 * Reference functions of thermocouples, ITS-90: NIST Monograph 175 (Burns et al., 1993), the same
 * as IEC 60584-1:2013. Voltage in mV from temperature in Cel is the definition; the inverse
 * polynomials of the monograph are only within 0.05 K of it, so they serve as a start for Newton's
 * method.
 */
final class ReferenceFunction {
  private static final ReferenceFunction K =
      new ReferenceFunction(
          -200,
          1372,
          new double[] {
            0,
            0.394501280250e-1,
            0.236223735980e-4,
            -0.328589067840e-6,
            -0.499048287770e-8,
            -0.675090591730e-10,
            -0.574103274280e-12,
            -0.310888728940e-14,
            -0.104516093650e-16,
            -0.198892668780e-19,
            -0.163226974860e-22
          },
          new double[] {
            -0.176004136860e-1,
            0.389212049750e-1,
            0.185587700320e-4,
            -0.994575928740e-7,
            0.318409457190e-9,
            -0.560728448890e-12,
            0.560750590590e-15,
            -0.320207200030e-18,
            0.971511471520e-22,
            -0.121047212750e-25
          },
          new Bump(0.118597600000, -0.118343200000e-3, 126.9686),
          new double[] {
            0,
            2.5173462e1,
            -1.1662878,
            -1.0833638,
            -8.9773540e-1,
            -3.7342377e-1,
            -8.6632643e-2,
            -1.0450598e-2,
            -5.1920577e-4
          },
          new double[] {
            0,
            2.508355e1,
            7.860106e-2,
            -2.503131e-1,
            8.315270e-2,
            -1.228034e-2,
            9.804036e-4,
            -4.413030e-5,
            1.057734e-6,
            -1.052755e-8
          },
          20.644,
          new double[] {
            -1.318058e2, 4.830222e1, -1.646031, 5.464731e-2, -9.650715e-4, 8.802193e-6, -3.110810e-8
          });

  private static final ReferenceFunction T =
      new ReferenceFunction(
          -200,
          400,
          new double[] {
            0,
            0.387481063640e-1,
            0.441944343470e-4,
            0.118443231050e-6,
            0.200329735540e-7,
            0.901380195590e-9,
            0.226511565930e-10,
            0.360711542050e-12,
            0.384939398830e-14,
            0.282135219250e-16,
            0.142515947790e-18,
            0.487686622860e-21,
            0.107955392700e-23,
            0.139450270620e-26,
            0.797951539270e-30
          },
          new double[] {
            0,
            0.387481063640e-1,
            0.332922278800e-4,
            0.206182434040e-6,
            -0.218822568460e-8,
            0.109968809280e-10,
            -0.308157587720e-13,
            0.454791352900e-16,
            -0.275129016730e-19
          },
          new Bump(0, 0, 0),
          new double[] {
            0,
            2.5949192e1,
            -2.1316967e-1,
            7.9018692e-1,
            4.2527777e-1,
            1.3304473e-1,
            2.0241446e-2,
            1.2668171e-3
          },
          new double[] {
            0, 2.592800e1, -7.602961e-1, 4.637791e-2, -2.165394e-3, 6.048144e-5, -7.293422e-7
          },
          Double.POSITIVE_INFINITY,
          new double[] {0});

  private static final int NEWTON_STEPS = 3;
  private static final double SLOPE_STEP_K = 0.01;

  private final double lowestCel;
  private final double highestCel;
  private final double[] below;
  private final double[] above;
  private final Bump bump;
  private final double[] startBelow;
  private final double[] start;
  private final double hotFromMv;
  private final double[] startHot;

  private ReferenceFunction(
      double lowestCel,
      double highestCel,
      double[] below,
      double[] above,
      Bump bump,
      double[] startBelow,
      double[] start,
      double hotFromMv,
      double[] startHot) {
    this.lowestCel = lowestCel;
    this.highestCel = highestCel;
    this.below = below;
    this.above = above;
    this.bump = bump;
    this.startBelow = startBelow;
    this.start = start;
    this.hotFromMv = hotFromMv;
    this.startHot = startHot;
  }

  static ReferenceFunction of(ThermocoupleType type) {
    return switch (type) {
      case K -> K;
      case T -> T;
    };
  }

  /** The exponential term a0 exp(a1 (t - a2)^2) of type K above 0 Cel. */
  private record Bump(double a0, double a1, double a2) {
    double at(double cel) {
      return a0 == 0 ? 0 : a0 * Math.exp(a1 * (cel - a2) * (cel - a2));
    }
  }

  double lowestCel() {
    return lowestCel;
  }

  double highestCel() {
    return highestCel;
  }

  /** Voltage with the reference junction at 0 Cel. */
  double millivolt(double cel) {
    return cel < 0 ? horner(below, cel) : horner(above, cel) + bump.at(cel);
  }

  /** Temperature by the monograph's inverse polynomial, within 0.05 K. */
  double inversePolynomialCel(double mv) {
    if (mv < 0) {
      return horner(startBelow, mv);
    }
    return horner(mv < hotFromMv ? start : startHot, mv);
  }

  /** Temperature at which {@link #millivolt} gives a voltage. */
  double celsius(double mv) {
    double cel = inversePolynomialCel(mv);
    for (int i = 0; i < NEWTON_STEPS; i++) {
      double slope =
          (millivolt(cel + SLOPE_STEP_K) - millivolt(cel - SLOPE_STEP_K)) / (2 * SLOPE_STEP_K);
      cel -= (millivolt(cel) - mv) / slope;
    }
    return cel;
  }

  private static double horner(double[] coefficients, double x) {
    double sum = 0;
    for (int i = coefficients.length - 1; i >= 0; i--) {
      sum = sum * x + coefficients[i];
    }
    return sum;
  }
}
