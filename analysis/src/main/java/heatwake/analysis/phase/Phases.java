package heatwake.analysis.phase;

import heatwake.analysis.electric.Electricity;
import heatwake.analysis.series.Recording;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What the heater was doing over a run.
 *
 * @param spans phases in order, without a hole, from the first moment of the run to the last
 * @param cycles compressor cycles in order
 * @param restSeen where something other than the water's temperatures shows that the compressor
 *     rests
 */
public record Phases(List<PhaseSpan> spans, List<Cycle> cycles, Track restSeen) {

  public Phases {
    spans = List.copyOf(spans);
    cycles = List.copyOf(cycles);
  }

  /**
   * Finds phases and cycles from whatever channels there are: electric draw, refrigerant pressures,
   * temperature rise, flow, flow switch, pump.
   */
  public static Phases of(Timeline timeline, Recording recording) {
    return of(timeline, recording, Electricity.of(recording, timeline));
  }

  /**
   * The same.
   *
   * @param electricity how the electric side of the recording is known
   */
  public static Phases of(Timeline timeline, Recording recording, Electricity electricity) {
    int size = timeline.size();
    // What else is known of the runs is added to it.
    Track waterMoves = WaterMovement.of(timeline).copy();
    Optional<RefrigerantLift> lift = RefrigerantLift.of(timeline);
    Optional<Track> lifts = lift.map(RefrigerantLift::compressor);
    Optional<WaterRise> rise = WaterRise.of(timeline, recording.rig(), waterMoves);
    CompressorEffect effect = CompressorEffect.of(timeline, lift, rise);
    Optional<ElectricDraw> draw =
        ElectricDraw.of(timeline, recording.rig().heater(), waterMoves, effect);
    Optional<CountedDraw> counted =
        draw.isPresent()
            ? Optional.empty()
            : electricity
                .counted()
                .map(
                    power ->
                        CountedDraw.of(
                            timeline,
                            recording.rig().heater(),
                            power,
                            effect,
                            effectOf(lifts, rise, size)));
    Track compressor =
        CompressorRun.of(
            size,
            timeline.stepMs(),
            draw.map(ElectricDraw::compressor).or(() -> counted.map(CountedDraw::compressor)),
            lifts,
            rise);
    if (draw.isPresent()) {
      FailedTries.takeFrom(compressor, timeline, recording, lift, rise);
    }
    if (!waterMoves.speaks()) {
      WaterBesideRuns.addTo(waterMoves, compressor, timeline);
    }
    for (Stretch past : PastHeater.of(timeline, compressor::yes)) {
      waterMoves.fill(past.from(), past.to(), Track.NO);
    }
    HotStandingWater.markIn(waterMoves, timeline);
    Track rests = RestSeen.of(compressor, draw.isPresent() || lift.isPresent(), counted);
    ReversedCycles reversed =
        ReversedCycles.join(
            timeline,
            compressor,
            draw.map(ElectricDraw::compressor),
            rise.map(
                    water ->
                        ChilledWater.of(
                            timeline, recording.rig(), compressor, rests, waterMoves, water))
                .orElse(List.of()));
    Phase[] phase = new Phase[size];
    for (int i = 0; i < size; i++) {
      boolean fan = draw.isPresent() && draw.get().fan().yes(i);
      phase[i] = resting(compressor.at(i), fan, waterMoves.at(i));
    }
    markRunning(phase, compressor, timeline, lift, rise, reversed);
    List<PhaseSpan> spans = spans(phase, timeline, recording.endMs());
    Track restSeen = RestSeen.of(compressor, draw.isPresent() || lift.isPresent(), counted);
    return new Phases(spans, CycleFinder.of(spans, timeline, restSeen), restSeen);
  }

  /** What a running compressor does to its surroundings: the quicker of lift and rise. */
  private static Track effectOf(Optional<Track> lift, Optional<WaterRise> rise, int size) {
    return lift.filter(Track::everYes)
        .or(() -> rise.map(WaterRise::heats))
        .orElseGet(() -> new Track(size));
  }

  /** The phases but for circulating water at whose time nothing but itself shows the rest. */
  public List<PhaseSpan> withRestSeen(Timeline timeline) {
    return spans.stream()
        .filter(
            span ->
                span.phase() != Phase.CIRCULATING || restSeen.yes(timeline.indexAt(span.startMs())))
        .toList();
  }

  private static Phase resting(byte compressor, boolean fan, byte waterMoves) {
    if (compressor == Track.YES) {
      return Phase.STARTING;
    }
    if (compressor == Track.NO && fan) {
      return Phase.FAN;
    }
    if (waterMoves == Track.NO) {
      return Phase.OFF;
    }
    return compressor == Track.NO && waterMoves == Track.YES ? Phase.CIRCULATING : Phase.UNKNOWN;
  }

  private static void markRunning(
      Phase[] phase,
      Track compressor,
      Timeline timeline,
      Optional<RefrigerantLift> lift,
      Optional<WaterRise> rise,
      ReversedCycles reversed) {
    Defrost.mark(phase, timeline, compressor, lift, rise);
    reversed.mark(phase, compressor);
    DefrostByDraw.mark(phase, timeline, compressor, rise);
    Settling settling = Settling.in(timeline, rise);
    for (int i = 0; i < phase.length; ) {
      int end = i + 1;
      while (end < phase.length && phase[end] == phase[i]) {
        end++;
      }
      if (phase[i] == Phase.STARTING) {
        Arrays.fill(phase, settling.steadyFrom(i, end), end, Phase.STEADY);
      }
      i = end;
    }
  }

  private static List<PhaseSpan> spans(Phase[] phase, Timeline timeline, long endMs) {
    List<PhaseSpan> spans = new ArrayList<>();
    int from = 0;
    for (int i = 1; i <= phase.length; i++) {
      boolean last = i == phase.length;
      if (last || phase[i] != phase[from]) {
        long end = last ? Math.max(endMs, timeline.timeMs(i - 1)) : timeline.timeMs(i);
        // What begins with the last instant of the run has no length and is no phase yet.
        if (spans.isEmpty() || end > timeline.timeMs(from)) {
          spans.add(new PhaseSpan(phase[from], timeline.timeMs(from), end));
        }
        from = i;
      }
    }
    return spans;
  }

  /** The phase at a time; unknown outside the run. */
  public Phase at(long timeMs) {
    int low = 0;
    int high = spans.size() - 1;
    while (low <= high) {
      int middle = (low + high) >>> 1;
      PhaseSpan span = spans.get(middle);
      if (timeMs < span.startMs()) {
        high = middle - 1;
      } else if (timeMs >= span.endMs() && middle < spans.size() - 1) {
        low = middle + 1;
      } else {
        return timeMs <= span.endMs() ? span.phase() : Phase.UNKNOWN;
      }
    }
    return Phase.UNKNOWN;
  }
}
