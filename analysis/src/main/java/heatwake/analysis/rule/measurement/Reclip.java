package heatwake.analysis.rule.measurement;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Wording;

/**
 * A clip taken off its pipe and put back within minutes while nothing else moved.
 *
 * @param accused water-in or water-out
 * @param startMs from when it cannot be believed, UTC milliseconds
 * @param endMs until when
 * @param beforeK what it read on its pipe
 * @param awayK what it read off it
 * @param partnerK what the other probe read meanwhile
 */
record Reclip(
    Channel accused, long startMs, long endMs, double beforeK, double awayK, double partnerK)
    implements ClipOff {
  static final String LIMITS =
      "So is one that leaves its level by as much and is back within 4 min while the other moves by"
          + " less than 25 % of it and power or current, pressures and flow, as far as read, keep"
          + " within 12 % (ours): a defrost moves all of them. An outlet that falls so needs a"
          + " pressure of the refrigerant or air above 15 °C, which leaves no ice (common practice),"
          + " and a flow meter, or a rise below zero beyond the same limit; one that climbs needs the"
          + " flow meter. It is back on its pipe, so it is for your information only.";

  /** What was seen, in words. */
  String words() {
    Channel partner = PipePair.partnerOf(accused);
    return accused.id()
        + " went from "
        + Wording.celsius(beforeK)
        + " to "
        + Wording.celsius(awayK)
        + " and was back within "
        + Wording.duration((endMs - startMs) / 1e3)
        + " while "
        + partner.id()
        + " stayed at "
        + Wording.celsius(partnerK)
        + " and nothing else of the heater moved";
  }
}
