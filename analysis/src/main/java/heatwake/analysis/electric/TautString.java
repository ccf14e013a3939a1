package heatwake.analysis.electric;

/**
 * The shortest line through a row of gates: of all courses that a register permits the one that
 * changes its slope least, so that no change of power is seen that the register does not show.
 * After Davies and Kovac, Ann. Statist. 29 (2001) 1, section 2 (from memory); each gate is looked
 * at once.
 */
final class TautString {
  private final double[] at;
  private final int[] knots;
  private final double[] heights;
  private int count;

  private TautString(double[] at) {
    this.at = at;
    this.knots = new int[at.length];
    this.heights = new double[at.length];
  }

  /**
   * Draws the line from the middle of the first gate to the middle of the last.
   *
   * @param at where the gates stand, ascending
   * @param low lower posts
   * @param high upper posts
   */
  static TautString through(double[] at, double[] low, double[] high) {
    TautString line = new TautString(at);
    if (at.length > 0) {
      line.draw(low, high);
    }
    return line;
  }

  /** Number of knots, the ends included. */
  int size() {
    return count;
  }

  /** The gate at which knot {@code k} is. */
  int gate(int k) {
    return knots[k];
  }

  /** Height of knot {@code k}. */
  double height(int k) {
    return heights[k];
  }

  private void draw(double[] low, double[] high) {
    int last = at.length - 1;
    Chain above = new Chain(at, 1);
    Chain below = new Chain(at, -1);
    bend(0, (low[0] + high[0]) / 2, above, below);
    for (int i = 1; i <= last; i++) {
      double middle = (low[i] + high[i]) / 2;
      above.add(i, i == last ? middle : high[i]);
      follow(below, above, i, i == last ? middle : high[i]);
      below.add(i, i == last ? middle : low[i]);
      follow(above, below, i, i == last ? middle : low[i]);
    }
    if (last > 0) {
      knots[count] = last;
      heights[count++] = (low[last] + high[last]) / 2;
    }
  }

  /** Where a new post crosses the other chain, the line bends around that chain's posts. */
  private void follow(Chain around, Chain crossing, int gate, double height) {
    while (crossing.isStraight() && around.length() > 1 && around.isCrossedBy(crossing)) {
      around.dropFirst();
      bend(around.firstGate(), around.firstHeight(), around, crossing);
      crossing.add(gate, height);
    }
  }

  private void bend(int gate, double height, Chain around, Chain crossing) {
    knots[count] = gate;
    heights[count++] = height;
    if (around.length() == 0) {
      around.restart(gate, height);
    }
    crossing.restart(gate, height);
  }

  /** Posts on one side that the line may have to bend around, from its last knot on. */
  private static final class Chain {
    private final double[] at;
    private final double sign;
    private final int[] gates;
    private final double[] heights;
    private int first;
    private int end;

    /** {@code sign} is 1 for the posts above, whose slopes grow, and -1 for those below. */
    Chain(double[] at, double sign) {
      this.at = at;
      this.sign = sign;
      this.gates = new int[at.length + 1];
      this.heights = new double[at.length + 1];
    }

    int length() {
      return end - first;
    }

    boolean isStraight() {
      return length() == 2;
    }

    int firstGate() {
      return gates[first];
    }

    double firstHeight() {
      return heights[first];
    }

    void restart(int gate, double height) {
      first = 0;
      gates[0] = gate;
      heights[0] = height;
      end = 1;
    }

    void dropFirst() {
      first++;
    }

    void add(int gate, double height) {
      while (length() >= 2 && sign * (slope(end - 2, end - 1) - slopeTo(gate, height)) >= 0) {
        end--;
      }
      gates[end] = gate;
      heights[end++] = height;
    }

    /** Whether the straight way to a post of the other side leads past this side's first post. */
    boolean isCrossedBy(Chain other) {
      return sign * (other.slope(other.first, other.first + 1) - slope(first, first + 1)) > 0;
    }

    private double slopeTo(int gate, double height) {
      return (height - heights[end - 1]) / (at[gate] - at[gates[end - 1]]);
    }

    private double slope(int from, int to) {
      return (heights[to] - heights[from]) / (at[gates[to]] - at[gates[from]]);
    }
  }
}
