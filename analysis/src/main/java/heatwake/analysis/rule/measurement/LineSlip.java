package heatwake.analysis.rule.measurement;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.List;

/**
 * A clip of the refrigerant circuit that is off its line: it goes to the air while the circuit
 * stands, or reads what no line can have.
 *
 * @param line temp-suction, temp-liquid or temp-discharge
 * @param startMs from when it cannot be believed, UTC milliseconds
 * @param words what was seen, in words
 */
record LineSlip(Channel line, long startMs, String words) {
  static final String LIMITS =
      "A clip of the circuit (temp-suction, temp-liquid, temp-discharge) is off its line where it"
          + " goes to the air within 3 min of steady running, against the 6 min before and for 9 min"
          + " and all that follows: by more than 5 K and 5 standard uncertainties, and more than half"
          + " of the way, while high side, low side and power, as far as read, keep within 5 % and"
          + " the entering water within 1 K; the suction line only where the discharge line does not"
          + " follow it (25 %). Or where, for 15 min and nine tenths of the steady running, the"
          + " discharge line reads more than 3 K and 3 standard uncertainties below the condensing"
          + " temperature, or the liquid line more than 5 K and 3 below the entering water, towards"
          + " the air, in a circuit that condenses above both: gas that has not condensed is no"
          + " colder, and water cools nothing below itself (second law; the margins are ours).";

  private static final List<Channel> LINES =
      List.of(Channel.TEMP_SUCTION, Channel.TEMP_LIQUID, Channel.TEMP_DISCHARGE);

  /** Every clip that is off its line, with the first time at which it shows. */
  static List<LineSlip> in(Evidence evidence) {
    List<Channel> read = LINES.stream().filter(evidence.timeline()::has).toList();
    if (read.isEmpty()) {
      return List.of();
    }
    List<List<LineBlock>> spells = LineBlock.spells(evidence);
    return read.stream()
        .flatMap(
            line -> {
              List<List<LineBlock>> known = known(spells, line);
              return TooColdLine.in(evidence, line, known)
                  .or(() -> LineInTheAir.in(evidence, line, known))
                  .stream();
            })
        .toList();
  }

  /** The blocks in which a line was read. */
  private static List<List<LineBlock>> known(List<List<LineBlock>> spells, Channel line) {
    return spells.stream()
        .map(spell -> spell.stream().filter(block -> !Double.isNaN(block.lineK(line))).toList())
        .toList();
  }

  /** Standard uncertainty of a clip at some temperature, K. */
  static double standardK(Evidence evidence, Channel line, double atK) {
    return ProbeUncertainty.of(evidence.recording().rig(), line).atTemperatureK(atK);
  }
}
