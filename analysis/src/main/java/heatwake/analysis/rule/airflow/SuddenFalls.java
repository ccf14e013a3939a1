package heatwake.analysis.rule.airflow;

import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;

/**
 * Parts heating where it is gone within minutes and comes back: a defrost that phases did not tell,
 * or a stop that the draw hides, as with a fan or an electric rod that thaws the coil. Ice takes
 * heat over tens of minutes (common practice), so what is lost at such an edge is not lost to ice.
 */
final class SuddenFalls {
  /** Heat is there above this share of its best, and gone below the other one; ours. */
  private static final double THERE = 0.6;

  private static final double GONE = 0.25;

  /** And comes back from this share on; ours. */
  private static final double BACK = 0.5;

  /** Within this time; ours: a clipped probe follows in two minutes. */
  private static final double WITHIN_S = 240;

  /** After it comes back it settles for so long, as after a start; common practice. */
  private static final double SETTLES_S = 360;

  /** The best is that of so long; ours. */
  private static final double BEST_S = 180;

  private final Timeline timeline;
  private final double[] output;

  SuddenFalls(Timeline timeline, double[] output) {
    this.timeline = timeline;
    this.output = output;
  }

  /** The heating between two instants, each part up to where it suddenly ends. */
  List<Stretch> between(int from, int to) {
    double best = best(from, to);
    List<Stretch> found = new ArrayList<>();
    int begin = from;
    int last = from;
    int i = from;
    while (i < to) {
      if (output[i] >= THERE * best) {
        last = i;
      }
      boolean suddenly = i - last <= timeline.instants(WITHIN_S) && last > begin;
      if (output[i] < GONE * best && suddenly) {
        found.add(new Stretch(begin, last + 1));
        while (i < to && !(output[i] >= BACK * best)) {
          i++;
        }
        begin = Math.min(to, i + timeline.instants(SETTLES_S));
        i = begin;
        last = begin;
      } else {
        i++;
      }
    }
    if (begin < to) {
      found.add(new Stretch(begin, to));
    }
    return found;
  }

  private double best(int from, int to) {
    int wide = timeline.instants(BEST_S);
    double best = Double.NaN;
    for (int i = from; i + wide <= to; i += wide) {
      double mean = Stretch.mean(output, i, i + wide);
      best = mean > best || Double.isNaN(best) ? mean : best;
    }
    return best;
  }
}
