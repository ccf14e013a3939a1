package heatwake.analysis.phase;

import java.util.Optional;

/**
 * Where something other than the water's temperatures shows that the compressor rests: a meter or
 * pressures do so at every moment, the register of a kWh meter only over a rest long enough for its
 * step.
 */
final class RestSeen {
  private RestSeen() {}

  /**
   * @param atOnce whether a channel shows it at every moment
   */
  static Track of(Track compressor, boolean atOnce, Optional<CountedDraw> counted) {
    Track seen = new Track(compressor.size());
    for (int i = 0; i < compressor.size(); ) {
      int from = i;
      int end = compressor.endOfStretch(from);
      boolean byCount = counted.filter(one -> one.showsRest(from, end)).isPresent();
      boolean shows = compressor.no(from) && (atOnce || byCount);
      seen.fill(i, end, shows ? Track.YES : Track.UNKNOWN);
      i = end;
    }
    return seen;
  }
}
