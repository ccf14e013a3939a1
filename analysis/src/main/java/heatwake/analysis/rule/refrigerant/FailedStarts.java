package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Wording;
import java.util.List;

/**
 * Starts in a row at which the high side hardly rose.
 *
 * @param starts at least one, in order
 * @param mayBePump whether each may be the pool pump's draw, and no start at all
 */
public record FailedStarts(List<StartPressures> starts, boolean mayBePump) {
  static FailedStarts of(List<StartPressures> starts, Evidence evidence) {
    return new FailedStarts(
        List.copyOf(starts), starts.stream().allMatch(start -> PumpsDraw.mayBe(evidence, start)));
  }

  /** When the first began, UTC milliseconds. */
  public long startMs() {
    return starts.get(0).cycle().startMs();
  }

  /** When the running after the last was over, UTC milliseconds. */
  long endMs() {
    return starts.get(starts.size() - 1).untilMs();
  }

  /** What was seen at the first, and how often, with numbers and units. */
  public String words() {
    StartPressures first = starts.get(0);
    StringBuilder text = new StringBuilder(120);
    text.append("High side ")
        .append(Wording.megapascals(first.beforePa()))
        .append(" before the start, ")
        .append(Wording.megapascals(first.afterPa()))
        .append(" after 5 min of running");
    first.suctionPa().ifPresent(low -> text.append(", low side ").append(Wording.megapascals(low)));
    if (first.isWatersOwn()) {
      text.append("; saturation at the entering water is ")
          .append(Wording.megapascals(first.waterLiftPa().orElseThrow()));
    }
    first
        .powerW()
        .ifPresent(
            power -> text.append("; the compressor draws ").append(Wording.kilowatts(power)));
    if (starts.size() > 1) {
      text.append("; the same at ").append(starts.size()).append(" starts");
    }
    if (mayBePump) {
      text.append(
          "; the draw came with the water and moved neither pressure, so it may be the pool pump's,"
              + " and the compressor not have started");
    }
    return text.toString();
  }
}
