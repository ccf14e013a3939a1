package heatwake.analysis.rule.measurement;

import heatwake.analysis.rule.Evidence;
import java.util.List;
import java.util.stream.Stream;

/**
 * Every time in which a clip is off its pipe.
 *
 * @param lasting for minutes, or for good
 * @param brief for about a minute, outside of those
 */
record ClipsOff(List<OffPipe> lasting, List<Reclip> brief) {
  static ClipsOff in(Evidence evidence) {
    List<OffPipe> lasting = OffPipe.in(evidence);
    return new ClipsOff(
        lasting,
        ReclipFinder.in(evidence).stream()
            .filter(one -> lasting.stream().noneMatch(o -> o.overlaps(one.startMs(), one.endMs())))
            .toList());
  }

  /** Those blocks in which both clips sat on their pipes throughout. */
  List<PipeBlock> without(List<PipeBlock> blocks) {
    return blocks.stream()
        .filter(
            block ->
                Stream.concat(lasting.stream(), brief.stream())
                    .noneMatch(off -> off.overlaps(block.startMs(), block.endMs())))
        .toList();
  }
}
