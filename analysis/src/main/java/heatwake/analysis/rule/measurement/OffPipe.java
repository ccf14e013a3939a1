package heatwake.analysis.rule.measurement;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A pipe probe that is off its pipe while the heater runs on: alone it goes where no heat takes it.
 *
 * @param accused water-in or water-out
 * @param startMs from when it cannot be believed, UTC milliseconds
 * @param endMs until when: it is back on its pipe then, or the recording ends
 * @param isBack whether it came back
 * @param beforeK what it read on its pipe
 * @param awayK what it read off it
 * @param partnerK what the other probe read meanwhile
 */
record OffPipe(
    Channel accused,
    long startMs,
    long endMs,
    boolean isBack,
    double beforeK,
    double awayK,
    double partnerK)
    implements ClipOff {
  static final String LIMITS =
      "Off its pipe is also a probe that, alone (the other moves by less than 25 % of it), makes the"
          + " rise of a heater that runs on at equal power and high side, as far as read, and flow (within 25"
          + " and 30 %, no defrost) fall below zero by more than the usual rise of at least 3 min, or grow"
          + " beyond three times that of at least 10 min, and by 1 K or 5 standard uncertainties more, for 90 s and three readings:"
          + " neither cooling nor a defrost takes more from the water than heating gives it, and no"
          + " heater gives three times its heat (ours). A rise by the outlet needs a flow meter: water"
          + " that stands grows hot too.";

  private static final double SHORTEST_S = 90;
  private static final int READINGS = 3;

  /** A probe needs this long to come to the air and back to its pipe, s; ours. */
  private static final double SETTLES_S = 120;

  /** What it read on its pipe is taken from so long about, s; ours. */
  private static final double ABOUT_S = 1800;

  /** The other is compared within so long, while the pool hardly warms, s; ours. */
  private static final double COMPARED_S = 600;

  private static final double PARTNER_SHARE = 0.25;

  /** Every such time, in order. */
  static List<OffPipe> in(Evidence evidence) {
    return PairWatch.of(evidence)
        .map(pair -> in(pair, evidence.recording().endMs()))
        .orElseGet(List::of);
  }

  private static List<OffPipe> in(PairWatch pair, long endOfRunMs) {
    Timeline timeline = pair.timeline();
    int settles = timeline.instants(SETTLES_S);
    int shortest =
        Math.max(
            timeline.instants(SHORTEST_S),
            READINGS
                * Math.max(
                    timeline.intervalInstants(Channel.WATER_IN),
                    timeline.intervalInstants(Channel.WATER_OUT)));
    List<OffPipe> found = new ArrayList<>();
    int until = 0;
    for (Stretch stretch : pair.impossible(settles / 2)) {
      if (stretch.from() >= until && stretch.length() >= shortest) {
        Optional<OffPipe> off = of(pair, stretch, settles, endOfRunMs);
        if (off.isPresent()) {
          found.add(off.get());
          until = off.get().isBack() ? timeline.firstAtOrAfter(off.get().endMs()) : timeline.size();
        }
      }
    }
    return found;
  }

  private static Optional<OffPipe> of(
      PairWatch pair, Stretch stretch, int settles, long endOfRunMs) {
    Timeline timeline = pair.timeline();
    Stretch seen =
        new Stretch(
            stretch.from(), Math.min(stretch.to(), stretch.from() + timeline.instants(COMPARED_S)));
    double inK = seen.mean(timeline.of(Channel.WATER_IN));
    double outK = seen.mean(timeline.of(Channel.WATER_OUT));
    double inMoves = inK - onPipe(pair, Channel.WATER_IN, stretch, settles);
    double outMoves = outK - onPipe(pair, Channel.WATER_OUT, stretch, settles);
    boolean isInlet = Math.abs(inMoves) > Math.abs(outMoves);
    double moves = isInlet ? inMoves : outMoves;
    double partner = isInlet ? outMoves : inMoves;
    if (!(Math.abs(moves) > pair.limitK())
        || !(Math.abs(partner) < PARTNER_SHARE * Math.abs(moves))
        || (!isInlet && moves > 0 && !pair.hasMeter())) {
      return Optional.empty();
    }
    int usual = pair.usualFrom(stretch.to(), settles);
    int back = usual < 0 ? timeline.size() : Math.min(timeline.size(), usual + settles);
    return Optional.of(
        new OffPipe(
            isInlet ? Channel.WATER_IN : Channel.WATER_OUT,
            timeline.timeMs(Math.max(0, stretch.from() - settles)),
            back < timeline.size() ? timeline.timeMs(back) : endOfRunMs,
            usual >= 0,
            (isInlet ? inK : outK) - moves,
            isInlet ? inK : outK,
            isInlet ? outK : inK));
  }

  /** What a probe read on its pipe shortly before, or else after. */
  private static double onPipe(PairWatch pair, Channel channel, Stretch off, int settles) {
    double[] values = pair.timeline().of(channel);
    int about = pair.timeline().instants(ABOUT_S);
    double before = pair.usualMean(values, off.from() - about, off.from() - settles);
    return Double.isNaN(before)
        ? pair.usualMean(values, off.to() + settles, off.to() + about)
        : before;
  }

  /** What was seen, in words. */
  String words() {
    String partner = PipePair.partnerOf(accused).id();
    return accused.id()
        + " went from "
        + Wording.celsius(beforeK)
        + " to "
        + Wording.celsius(awayK)
        + (isBack ? " and back after " + Wording.duration((endMs - startMs) / 1e3) : "")
        + " while "
        + partner
        + " stayed at "
        + Wording.celsius(partnerK)
        + " and the heater ran on; no heat makes such a rise";
  }
}
