package heatwake.analysis.water;

/**
 * IAPWS-IF97 (IAPWS R7-97(2012)) region 1, equation (7) with the coefficients of table 2, and
 * region 4, equations (30) and (31) with those of table 34. Numbered as in the tables. No range is
 * checked here: {@link Water} does that.
 *
 * <p>The 34 terms are written out, grouped by the exponent of {@code a = 7.1 - pi}, so that every
 * power comes from a few multiplications. The last six terms go with {@code r = a / b}.
 */
final class If97 {
  /** Specific gas constant of water, J/(kg K). */
  private static final double R = 461.526;

  private static final double P_STAR_PA = 16.53e6;
  private static final double T_STAR_K = 1386;
  private static final double PI_SHIFT = 7.1;
  private static final double TAU_SHIFT = 1.222;

  private static final double N1 = 0.14632971213167;
  private static final double N2 = -0.84548187169114;
  private static final double N4 = 0.33855169168385e1;
  private static final double N5 = -0.95791963387872;
  private static final double N6 = 0.15772038513228;
  private static final double N7 = -0.16616417199501e-1;
  private static final double N8 = 0.81214629983568e-3;
  private static final double N9 = 0.28319080123804e-3;
  private static final double N10 = -0.60706301565874e-3;
  private static final double N11 = -0.18990068218419e-1;
  private static final double N12 = -0.32529748770505e-1;
  private static final double N13 = -0.21841717175414e-1;
  private static final double N14 = -0.52838357969930e-4;
  private static final double N15 = -0.47184321073267e-3;
  private static final double N16 = -0.30001780793026e-3;
  private static final double N17 = 0.47661393906987e-4;
  private static final double N18 = -0.44141845330846e-5;
  private static final double N19 = -0.72694996297594e-15;
  private static final double N20 = -0.31679644845054e-4;
  private static final double N21 = -0.28270797985312e-5;
  private static final double N22 = -0.85205128120103e-9;
  private static final double N23 = -0.22425281908000e-5;
  private static final double N24 = -0.65171222895601e-6;
  private static final double N25 = -0.14341729937924e-12;
  private static final double N26 = -0.40516996860117e-6;
  private static final double N27 = -0.12734301741641e-8;
  private static final double N28 = -0.17424871230634e-9;
  private static final double N29 = -0.68762131295531e-18;
  private static final double N30 = 0.14478307828521e-19;
  private static final double N31 = 0.26335781662795e-22;
  private static final double N32 = -0.11947622640071e-22;
  private static final double N33 = 0.18228094581404e-23;
  private static final double N34 = -0.93537087292458e-25;

  private static final double S1 = 0.11670521452767e4;
  private static final double S2 = -0.72421316703206e6;
  private static final double S3 = -0.17073846940092e2;
  private static final double S4 = 0.12020824702470e5;
  private static final double S5 = -0.32325550322333e7;
  private static final double S6 = 0.14915108613530e2;
  private static final double S7 = -0.48232657361591e4;
  private static final double S8 = 0.40511340542057e6;
  private static final double S9 = -0.23855557567849;
  private static final double S10 = 0.65017534844798e3;

  private If97() {}

  /** Specific enthalpy: h = R T* gamma_tau (table 3). */
  static double enthalpyJPerKg(double tK, double pPa) {
    double a = PI_SHIFT - pPa / P_STAR_PA;
    double b = T_STAR_K / tK - TAU_SHIFT;
    double i1 = 1 / b;
    double i2 = i1 * i1;
    double i3 = i2 * i1;
    double i4 = i2 * i2;
    double i5 = i4 * i1;
    double i8 = i4 * i4;
    double i9 = i8 * i1;
    double b2 = b * b;
    double b4 = b2 * b2;
    double b8 = b4 * b4;
    double a2 = a * a;
    double a4 = a2 * a2;
    double r = a * i1;
    double r2 = r * r;
    double r4 = r2 * r2;
    double r8 = r4 * r4;
    double r21 = r8 * r8 * r4 * r;
    double sum =
        -2 * N1 * i3 - N2 * i2 + N4 + b * (2 * N5 + b * (3 * N6 + b * (4 * N7 + b * 5 * N8)));
    sum += a * (-9 * N9 * i8 * i2 - 7 * N10 * i8 - N11 * i2 + N13 + 3 * N14 * b2);
    sum += a2 * (-3 * N15 * i4 + N17 + 3 * N18 * b2 + 17 * N19 * b8 * b8);
    sum += a2 * a * (-4 * N20 * i5 + 6 * N22 * b4 * b);
    sum += a4 * (-5 * N23 * i5 * i1 - 2 * N24 * i3 + 10 * N25 * b8 * b);
    sum += a4 * a * (-8 * N26 * i9);
    sum += a4 * a4 * (-11 * N27 * i8 * i4 - 6 * N28 * i5 * i2);
    sum +=
        r21
            * i9
            * (-29 * N29
                - 31 * N30 * r2
                - r8 * i1 * (38 * N31 + r * (39 * N32 + r * (40 * N33 + r * 41 * N34))));
    return R * T_STAR_K * sum;
  }

  /** Density: 1/rho = v = R T gamma_pi / p* (table 3). */
  static double densityKgPerM3(double tK, double pPa) {
    double a = PI_SHIFT - pPa / P_STAR_PA;
    double b = T_STAR_K / tK - TAU_SHIFT;
    double i1 = 1 / b;
    double i2 = i1 * i1;
    double i3 = i2 * i1;
    double i4 = i2 * i2;
    double i5 = i4 * i1;
    double i8 = i4 * i4;
    double i9 = i8 * i1;
    double b2 = b * b;
    double b3 = b2 * b;
    double b8 = b3 * b3 * b2;
    double a2 = a * a;
    double a4 = a2 * a2;
    double r = a * i1;
    double r2 = r * r;
    double r4 = r2 * r2;
    double r8 = r4 * r4;
    double r20 = r8 * r8 * r4;
    double sum = N9 * i9 + N10 * i5 * i2 + N11 * i1 + N12 + N13 * b + N14 * b3;
    sum += 2 * a * (N15 * i3 + N16 + N17 * b + N18 * b3 + N19 * b8 * b8 * b);
    sum += 3 * a2 * (N20 * i4 + N21 + N22 * b3 * b3);
    sum += 4 * a2 * a * (N23 * i5 + N24 * i2 + N25 * b8 * b2);
    sum += 5 * a4 * N26 * i8;
    sum += 8 * a4 * a2 * a * (N27 * i8 * i3 + N28 * i3 * i3);
    sum +=
        r20
            * i9
            * (21 * N29
                + 23 * N30 * r2
                + r8 * i1 * (29 * N31 + r * (30 * N32 + r * (31 * N33 + r * 32 * N34))));
    return P_STAR_PA / (R * tK * -sum);
  }

  /** Specific isobaric heat: cp = -R tau^2 gamma_tautau (table 3). */
  static double cpJPerKgK(double tK, double pPa) {
    double a = PI_SHIFT - pPa / P_STAR_PA;
    double tau = T_STAR_K / tK;
    double b = tau - TAU_SHIFT;
    double i1 = 1 / b;
    double i2 = i1 * i1;
    double i3 = i2 * i1;
    double i4 = i2 * i2;
    double i5 = i4 * i1;
    double i8 = i4 * i4;
    double b2 = b * b;
    double b4 = b2 * b2;
    double b8 = b4 * b4;
    double a2 = a * a;
    double a4 = a2 * a2;
    double r = a * i1;
    double r2 = r * r;
    double r4 = r2 * r2;
    double r8 = r4 * r4;
    double r21 = r8 * r8 * r4 * r;
    double sum = 6 * N1 * i4 + 2 * N2 * i3 + 2 * N5 + b * (6 * N6 + b * (12 * N7 + b * 20 * N8));
    sum += a * (90 * N9 * i8 * i3 + 56 * N10 * i8 * i1 + 2 * N11 * i3 + 6 * N14 * b);
    sum += a2 * (12 * N15 * i5 + 6 * N18 * b + 272 * N19 * b8 * b4 * b2 * b);
    sum += a2 * a * (20 * N20 * i5 * i1 + 30 * N22 * b4);
    sum += a4 * (30 * N23 * i5 * i2 + 6 * N24 * i4 + 90 * N25 * b8);
    sum += a4 * a * (72 * N26 * i8 * i2);
    sum += a4 * a4 * (132 * N27 * i8 * i5 + 42 * N28 * i8);
    sum +=
        r21
            * i8
            * i2
            * (870 * N29
                + 992 * N30 * r2
                + r8 * i1 * (1482 * N31 + r * (1560 * N32 + r * (1640 * N33 + r * 1722 * N34))));
    return -R * tau * tau * sum;
  }

  /** Saturation pressure, equation (30). */
  static double saturationPressurePa(double tK) {
    double theta = tK + S9 / (tK - S10);
    double a = (theta + S1) * theta + S2;
    double b = (S3 * theta + S4) * theta + S5;
    double c = (S6 * theta + S7) * theta + S8;
    double root = 2 * c / (-b + Math.sqrt(b * b - 4 * a * c));
    double square = root * root;
    return square * square * 1e6;
  }

  /** Saturation temperature, equation (31). */
  static double saturationTemperatureK(double pPa) {
    double beta = Math.sqrt(Math.sqrt(pPa / 1e6));
    double e = (beta + S3) * beta + S6;
    double f = (S1 * beta + S4) * beta + S7;
    double g = (S2 * beta + S5) * beta + S8;
    double d = 2 * g / (-f - Math.sqrt(f * f - 4 * e * g));
    double sum = S10 + d;
    return (sum - Math.sqrt(sum * sum - 4 * (S9 + S10 * d))) / 2;
  }
}
