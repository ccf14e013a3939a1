package heatwake.analysis.startup;

import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.phase.Track;
import heatwake.analysis.phase.WaterMovement;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.rule.water.WaterLosses;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.List;

/** Water moves, and the flow switch makes. */
final class FlowMadeCheck implements Check {
  /** A pump fills its lines within this time; common practice, s. */
  private static final double PRIMES_WITHIN_S = 180;

  /** Flow is read this long after water began to move, s. */
  private static final double LOOK_S = 60;

  @Override
  public StartupCheck.Item item() {
    return StartupCheck.Item.FLOW_MADE;
  }

  @Override
  public StartupCheck look(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!WaterLosses.canBeSeen(timeline)) {
      return notMeasured("no flow-heater, flow-total, flow-switch or pump-on reading");
    }
    Track moves = WaterMovement.of(timeline);
    int first = firstYes(moves);
    if (first < 0) {
      Stretch run = new Stretch(0, timeline.size());
      double pump = run.mean(timeline.of(Channel.PUMP_ON));
      return pump > 0.9 && run.durationS(timeline) > PRIMES_WITHIN_S
          ? fail(
              timeline.timeMs(timeline.size() - 1),
              "pump on for " + Wording.duration(run.durationS(timeline)) + ", no water moved")
          : notSeen("water moving");
    }
    int look = (int) Math.max(1, LOOK_S / timeline.stepS());
    Stretch minute = new Stretch(first, Math.min(timeline.size(), first + look));
    StringBuilder text = new StringBuilder(80);
    text.append(first == 0 ? "water moving from the beginning" : "water began to move");
    flow(timeline, new Stretch(minute.to() - 1, minute.to()), text);
    if (timeline.has(Channel.FLOW_SWITCH)) {
      double[] closed = timeline.of(Channel.FLOW_SWITCH);
      int made = first;
      while (made < closed.length && !(closed[made] >= 0.5)) {
        made++;
      }
      if (made == closed.length) {
        return fail(timeline.timeMs(minute.to() - 1), text + "; the flow switch never closed");
      }
      if (made > first) {
        text.append("; flow switch closed after ")
            .append(Wording.duration((made - first) * timeline.stepS()));
      } else {
        text.append("; flow switch closed");
      }
    }
    return pass(timeline.timeMs(first), text.toString());
  }

  private static int firstYes(Track moves) {
    for (int i = 0; i < moves.size(); i++) {
      if (moves.yes(i)) {
        return i;
      }
    }
    return -1;
  }

  private static void flow(Timeline timeline, Stretch at, StringBuilder text) {
    for (Channel channel : List.of(Channel.FLOW_HEATER, Channel.FLOW_TOTAL)) {
      double flow = at.mean(timeline.of(channel));
      if (!Double.isNaN(flow)) {
        text.append(", ").append(channel.id()).append(' ').append(Wording.flow(flow));
        return;
      }
    }
  }
}
