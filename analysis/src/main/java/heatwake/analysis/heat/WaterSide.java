package heatwake.analysis.heat;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.finding.ProbeZero;
import heatwake.analysis.flow.FlowBasis;
import heatwake.analysis.flow.FlowWays;
import heatwake.analysis.flow.HeaterShare;
import heatwake.analysis.phase.Phases;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.water.PoolWater;
import heatwake.analysis.zero.Alignment;
import heatwake.analysis.zero.Pair;
import heatwake.analysis.zero.Zeroing;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What the water's side of a run gives: zero of the pair, flow, share and heat.
 *
 * @param zero zero of {@code water-out} against {@code water-in}
 * @param pair that pair as it is used
 * @param riseK zeroed rise through the heater at every instant, all NaN without the pair; shared,
 *     not to be written to
 * @param share part of the total flow that goes through the heater
 * @param flow what heat is computed from
 * @param heat heat at every instant
 * @param seemsToCool whether {@code water-out} reads colder than {@code water-in} while the heater
 *     heats: the two may be exchanged, and neither is known to read the water that enters
 * @param missing what could not be had and what would give it, one sentence each
 */
@SuppressWarnings("ArrayRecordComponent") // a large array, shared on purpose
public record WaterSide(
    Optional<ProbeZero> zero,
    Optional<Pair> pair,
    double[] riseK,
    Optional<HeaterShare> share,
    Optional<FlowBasis> flow,
    Optional<HeatStream> heat,
    boolean seemsToCool,
    List<String> missing) {

  /** Gauge pressure in the heater where none is measured: usual for a pool; common practice. */
  private static final double USUAL_GAUGE_PA = 70e3;

  /** Finds all that the probes allow. */
  public static WaterSide of(Timeline recorded, Rig rig, Phases phases) {
    Timeline timeline = Alignment.of(recorded, phases.spans());
    List<String> missing = new ArrayList<>();
    Optional<ProbeZero> zero = zero(timeline, rig, phases, Channel.WATER_OUT);
    Optional<Pair> out = pair(timeline, rig, Channel.WATER_OUT, zero);
    if (zero.isEmpty() && out.isPresent()) {
      missing.add(Zeroing.whyNone(timeline));
    }
    zero.flatMap(Zeroing::driftInWords).ifPresent(missing::add);
    Optional<Pair> mixed =
        pair(
            timeline, rig, Channel.WATER_RETURN, zero(timeline, rig, phases, Channel.WATER_RETURN));
    Optional<HeaterShare> share = HeaterShare.of(timeline, rig, out, mixed);
    Optional<FlowBasis> flow = FlowWays.best(timeline, rig, phases.spans(), out);
    missing.addAll(missingFlow(flow, share));
    double[] riseK = riseK(timeline, out);
    boolean seemsToCool =
        out.filter(pair -> SeemsToCool.tells(timeline, phases, pair, riseK)).isPresent();
    if (seemsToCool) {
      missing.add(
          "heat: water-out reads colder than water-in while "
              + (Zeroing.restIsSeen(timeline) ? "the compressor runs" : "water moves")
              + ", so no heat is given out; see whether the two are exchanged or one has slipped");
    }
    Optional<FlowBasis> trusted = seemsToCool ? Optional.empty() : flow;
    Optional<HeatStream> heat =
        trusted.flatMap(
            basis ->
                (basis.hot() == Channel.WATER_OUT ? out : mixed)
                    .map(pair -> HeatStream.of(timeline, basis, pair, water(rig))));
    if (trusted.isPresent() && heat.isEmpty()) {
      missing.add("heat: water-in and water-out are needed; clip both to the heater's pipes");
    }
    return new WaterSide(zero, out, riseK, share, flow, heat, seemsToCool, missing);
  }

  private static List<String> missingFlow(Optional<FlowBasis> flow, Optional<HeaterShare> share) {
    List<String> missing = new ArrayList<>();
    if (flow.isEmpty()) {
      missing.add(
          "flow: no probe and no nameplate tells it; clip flow-heater, or flow-total and"
              + " water-return, or state flow-min and flow-max in [heater]");
    } else if (!flow.get().isMeasured()) {
      missing.add(
          "flow through the heater: not measured, "
              + flow.get().way()
              + "; clip flow-heater, or flow-total and water-return");
    }
    if (share.isEmpty()) {
      missing.add(
          "heater share: clip water-return beside water-in and water-out, or flow-total beside"
              + " flow-heater");
    }
    return missing;
  }

  private static double[] riseK(Timeline timeline, Optional<Pair> pair) {
    return pair.map(one -> HeaterShare.rise(timeline, one))
        .orElseGet(() -> Timeline.unknown(timeline.size()));
  }

  /**
   * Flow through the heater over instants, where meters tell it: the flow that heat is computed
   * from, times the share where that is the flow of all water. What is assumed is no reading of it.
   */
  public Optional<Estimate> heaterFlowM3PerS(int from, int to) {
    if (flow.isEmpty() || !flow.get().isMeasured()) {
      return Optional.empty();
    }
    double mean = MovingMean.once(flow.get().flowM3PerS(), from, to);
    if (Double.isNaN(mean)) {
      return Optional.empty();
    }
    Estimate basis = new Estimate(mean, flow.get().uncertainty().at(mean));
    return flow.get().hot() == Channel.WATER_OUT
        ? Optional.of(basis)
        : share.flatMap(one -> one.over(from, to)).map(basis::times);
  }

  /** The same at every instant, NaN where not known; empty where no meter tells it. */
  public Optional<double[]> heaterFlowTrace() {
    return flow.filter(FlowBasis::isMeasured)
        .map(
            basis -> {
              double[] all = basis.flowM3PerS();
              if (basis.hot() == Channel.WATER_OUT) {
                return all;
              }
              double[] shares = share.map(HeaterShare::trace).orElse(null);
              double[] through = new double[all.length];
              for (int i = 0; i < through.length; i++) {
                through[i] = shares == null ? Double.NaN : all[i] * shares[i];
              }
              return through;
            });
  }

  private static Optional<ProbeZero> zero(Timeline timeline, Rig rig, Phases phases, Channel hot) {
    return Zeroing.of(timeline, rig, phases.withRestSeen(timeline), phases.cycles(), hot);
  }

  private static Optional<Pair> pair(
      Timeline timeline, Rig rig, Channel hot, Optional<ProbeZero> zero) {
    return timeline.has(Channel.WATER_IN) && timeline.has(hot)
        ? Optional.of(Zeroing.pair(timeline, rig, hot, zero))
        : Optional.empty();
  }

  private static PoolWater water(Rig rig) {
    double atmospherePa = Atmosphere.standard(rig.site().altitudeM()).pa();
    return PoolWater.of(rig.pool().saltKgPerKg(), atmospherePa + USUAL_GAUGE_PA);
  }
}
