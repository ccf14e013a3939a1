package heatwake.analysis.rule.measurement;

import heatwake.analysis.finding.Severity;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.analysis.timeline.Screening;
import heatwake.analysis.timeline.WaterJump;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Possible values that come and go faster than what is measured can. */
final class LooseContact {
  /** A pipe or air probe cannot change faster than this and come back, K; ours. */
  private static final double SPIKE_K = 8;

  /** Within this time, s; ours: the fastest clipped probes need 10 s for two thirds of a step. */
  private static final double SPIKE_S = 10;

  /** Fewer spikes may be single garbled messages; ours. */
  private static final int SPIKES = 3;

  /** So few readings away from the rest may be garbled messages too; ours. */
  private static final int FEW = 3;

  private LooseContact() {}

  static Optional<FaultyReadings> in(Series series, Recording recording) {
    return jumps(series, recording).or(() -> spikes(series));
  }

  /** Jumps that the rest of the water denies. */
  private static Optional<FaultyReadings> jumps(Series series, Recording recording) {
    Series possible = Screening.possible(series);
    List<WaterJump> jumps = WaterJump.in(possible, recording);
    int readings = jumps.stream().mapToInt(jump -> jump.to() - jump.from()).sum();
    if (readings < FEW) {
      return Optional.empty();
    }
    WaterJump first = jumps.get(0);
    WaterJump last = jumps.get(jumps.size() - 1);
    String text =
        String.format(
            Locale.ROOT,
            "%s jumped from %s to %s and back%s (%d of %d readings) while the water flowed on and"
                + " %s moved by %s",
            series.channel().id(),
            Wording.celsius(first.beforeK()),
            Wording.celsius(first.awayK()),
            jumps.size() == 1 ? "" : ", " + jumps.size() + " times",
            readings,
            series.size(),
            first.partner().id(),
            Wording.kelvin(first.partnerK()));
    return Optional.of(
        new FaultyReadings(
            series.channel(),
            Severity.WARNING,
            possible.timeMs(first.from()),
            possible.timeMs(last.to() - 1),
            text));
  }

  /** Jumps away and back again within seconds: a loose contact. */
  private static Optional<FaultyReadings> spikes(Series series) {
    if (series.channel().quantity() != Quantity.TEMPERATURE) {
      return Optional.empty();
    }
    int count = 0;
    int first = -1;
    int last = -1;
    for (int r = 1; r + 1 < series.size(); r++) {
      double up = series.value(r) - series.value(r - 1);
      double down = series.value(r + 1) - series.value(r);
      boolean quick = series.timeMs(r + 1) - series.timeMs(r - 1) <= SPIKE_S * 1000;
      if (quick && Math.abs(up) > SPIKE_K && Math.abs(down) > SPIKE_K && up * down < 0) {
        first = first < 0 ? r : first;
        last = r;
        count++;
      }
    }
    if (count < SPIKES) {
      return Optional.empty();
    }
    String text =
        String.format(
            Locale.ROOT,
            "%s jumped by %.1f K and back within seconds, %d times",
            series.channel().id(),
            Math.abs(series.value(first) - series.value(first - 1)),
            count);
    return Optional.of(
        new FaultyReadings(
            series.channel(), Severity.WARNING, series.timeMs(first), series.timeMs(last), text));
  }
}
