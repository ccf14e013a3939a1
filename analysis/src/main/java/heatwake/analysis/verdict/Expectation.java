package heatwake.analysis.verdict;

import java.util.Arrays;

/** How a symptom stands under one cause: a cell of the reasoning table. */
public enum Expectation {
  /** Above its band. */
  ABOVE("+") {
    @Override
    double agreement(double grade) {
      return grade == 0 ? -ABSENT : grade;
    }
  },
  /** Mostly above its band; where a valve still holds it, within. */
  MOSTLY_ABOVE("(+)") {
    @Override
    double agreement(double grade) {
      return grade == 0 ? -SELDOM_ABSENT : grade;
    }
  },
  /** Below its band. */
  BELOW("-") {
    @Override
    double agreement(double grade) {
      return grade == 0 ? -ABSENT : -grade;
    }
  },
  /** Mostly below its band; where it has only begun, within. */
  MOSTLY_BELOW("(-)") {
    @Override
    double agreement(double grade) {
      return grade == 0 ? -SELDOM_ABSENT : -grade;
    }
  },
  /** Within its band. */
  WITHIN("=") {
    @Override
    double agreement(double grade) {
      return grade == 0 ? QUIET : -Math.abs(grade);
    }
  },
  /** Within its band, or a little to either side. */
  AROUND("~") {
    @Override
    double agreement(double grade) {
      return grade == 0 ? QUIET : -HALF * Math.abs(grade);
    }
  },
  /** Above its band or within it, never below. */
  NOT_BELOW("^") {
    @Override
    double agreement(double grade) {
      return grade >= 0 ? Math.max(TACIT, HALF * grade) : grade;
    }
  },
  /** Below its band or within it, never above. */
  NOT_ABOVE("v") {
    @Override
    double agreement(double grade) {
      return grade <= 0 ? Math.max(TACIT, -HALF * grade) : -grade;
    }
  },
  /** Says nothing about this cause. */
  ANY(".") {
    @Override
    double agreement(double grade) {
      return 0;
    }
  };

  /** What it tells against a cause when a symptom that should show does not; ours. */
  private static final double ABSENT = 0.5;

  /** The same where it often does not show; ours. */
  private static final double SELDOM_ABSENT = 0.2;

  /** What it tells for a cause when a symptom that should not show does not; ours. */
  private static final double QUIET = 0.2;

  /** What it tells for a cause when a symptom that may show does not; ours. */
  private static final double TACIT = 0.1;

  private static final double HALF = 0.5;

  private final String sign;

  Expectation(String sign) {
    this.sign = sign;
  }

  /** Its sign in the table. */
  public String sign() {
    return sign;
  }

  /** How well a grade from -1 to 1 agrees: from -1 (speaks against) to 1 (speaks for). */
  abstract double agreement(double grade);

  static Expectation of(String sign) {
    return Arrays.stream(values())
        .filter(one -> one.sign.equals(sign))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("no cell is written " + sign));
  }
}
