package heatwake.analysis.phase;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;

/**
 * Whether the machine runs on as before over a stretch. A cycle that is turned round stops the fan
 * and condenses in the iced coil, so that power and high side change at once; where all that is
 * read of them stays, it is not turned round, whatever the water's probes say.
 */
final class HeldDuty {
  /**
   * A turned cycle changes its draw by a tenth and more, the high side by half; half of it, ours.
   */
  private static final double HELD_WITHIN = 0.05;

  private static final int PARTS = 3;

  private HeldDuty() {}

  /**
   * Whether power and high side, as far as read, stay; false where neither is.
   *
   * @param before what to hold it against
   */
  static boolean over(Timeline timeline, Stretch stretch, Stretch before) {
    List<Channel> read =
        List.of(Channel.POWER, Channel.PRESSURE_DISCHARGE).stream().filter(timeline::has).toList();
    return !read.isEmpty()
        && read.stream().allMatch(channel -> stays(timeline.of(channel), stretch, before));
  }

  private static boolean stays(double[] values, Stretch stretch, Stretch before) {
    double usual = before.mean(values);
    for (int part = 0; part < PARTS; part++) {
      int from = stretch.from() + stretch.length() * part / PARTS;
      int to = stretch.from() + stretch.length() * (part + 1) / PARTS;
      double now = Stretch.mean(values, from, Math.max(to, from + 1));
      if (!(Math.abs(now - usual) < HELD_WITHIN * usual)) {
        return false;
      }
    }
    return true;
  }
}
