package heatwake.analysis.rule.water;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.expected.MostHeat;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Doubt;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Spell;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.site.Rig;
import heatwake.analysis.timeline.Stretch;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/** Too little water through the heater, measured or told by the rise. */
public final class LowHeaterFlow implements Rule {
  /** A rise is explained by low flow only if it exceeds the rise at minimum flow by this; ours. */
  private static final double MATERIAL_RISE = 1.10;

  /** Below this part of the minimum the heater is at risk; ours. */
  private static final double GRAVE_SHARE = 0.5;

  /** So many runs that end before they are steady show no chance reading; ours. */
  private static final int SHORT_RUNS = 3;

  private static final List<String> CAUSES =
      List.of(
          "bypass open too far past the heater",
          "dirty filter or full strainer basket",
          "pump speed set too low",
          "a valve half shut, or air drawn in before the pump");
  private static final String NEXT_CHECK =
      "Open the bypass towards the heater or check the strainer; then see whether the flow rises.";

  /** What the rise cannot tell from little water. */
  private static final String LOOSE_CLIP =
      "a pipe probe that is loose and reads the air or the sun";

  private static final String SIT_TIGHT =
      "See first that both pipe probes sit tight and insulated, since only they tell of the flow. ";

  private static final Set<Channel> RISE = Set.of(Channel.WATER_IN, Channel.WATER_OUT);

  @Override
  public String id() {
    return "low-heater-flow";
  }

  @Override
  public String summary() {
    return "The flow through the heater is below the nameplate minimum, or the water rises by more"
        + " than the expected heat could give it at that minimum.";
  }

  @Override
  public String needs() {
    return "flow-heater (or another way to the heater's flow) and heater.flow-min; without a flow:"
        + " water-in, water-out, [[heater.rating]] and heater.flow-min; sharper with the air"
        + " temperature";
  }

  @Override
  public String limits() {
    return "heater.flow-min of the rig; where it is absent, "
        + LeastFlow.LIMITS
        + " Raised when the flow is below it by more than 3 standard uncertainties and by 3 % (ours),"
        + " or, without a flow, when the rise exceeds the expected heat's rise at minimum flow by"
        + " 10 % (ours) and by more than 3 standard uncertainties; where the air is not measured,"
        + " that of the heat at a wet bulb of 28 °C (hardly met above: common practice). "
        + "Where no run becomes steady and they last less than 5 min in all, the heater's own meter has"
        + " to read so in most of three runs or more (ours). "
        + LowWhileRunning.LIMITS
        + FlowLockout.LIMITS;
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Optional<LeastFlow> least = LeastFlow.of(evidence.recording().rig().heater());
    if (least.isEmpty()) {
      return Outcome.notEnoughData("neither heater.flow-min nor a rated heat in the rig");
    }
    Outcome running = whileRunning(evidence, least.get());
    return running instanceof Outcome.Flagged
        ? running
        : lowWhileRunning(evidence, least.get())
            .or(() -> lockedOut(evidence))
            .map(Outcome::flagged)
            .orElse(running);
  }

  private Outcome whileRunning(Evidence evidence, LeastFlow least) {
    List<Duty> measured =
        evidence.duty().stream().filter(duty -> duty.has(DutyFigure.FLOW)).toList();
    if (!measured.isEmpty()) {
      return byFlow(evidence, measured, least);
    }
    Rig rig = evidence.recording().rig();
    List<Duty> told =
        evidence.duty().stream()
            .filter(duty -> duty.has(DutyFigure.RISE) && mostHeatW(duty, rig).isPresent())
            .toList();
    if (!told.isEmpty()) {
      return byRise(told, least, rig);
    }
    return withoutSteadyRunning(evidence, least);
  }

  /** Water that was too little while the heater ran, if not steadily. */
  private Optional<Flag> lowWhileRunning(Evidence evidence, LeastFlow least) {
    Timeline timeline = evidence.timeline();
    return LowWhileRunning.longest(evidence)
        .map(
            low ->
                flag(
                    timeline.timeMs(low.stretch().from()),
                    timeline.timeMs(low.stretch().to() - 1),
                    low.flowM3PerS(),
                    least,
                    low.words(timeline, least),
                    Set.of(Channel.FLOW_HEATER)));
  }

  /** A heater that the fall of the flow stopped and keeps away. */
  private Optional<Flag> lockedOut(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    return MeasuredFlow.in(evidence)
        .flatMap(
            flow ->
                FlowLockout.longest(evidence)
                    .map(
                        lockout ->
                            flag(
                                timeline.timeMs(lockout.rest().from()),
                                timeline.timeMs(lockout.rest().to() - 1),
                                lockout.afterM3PerS(),
                                flow.least(),
                                lockout.words(timeline, flow.least()),
                                Set.of(flow.channel()))));
  }

  private Outcome byFlow(Evidence evidence, List<Duty> measured, LeastFlow least) {
    return Spell.where(
            measured, duty -> MeasuredFlow.isLow(duty.of(DutyFigure.FLOW).orElseThrow(), least))
        .map(
            spell -> {
              double flow = spell.mean().of(DutyFigure.FLOW).orElseThrow().value();
              String rise =
                  spell
                      .mean()
                      .of(DutyFigure.RISE)
                      .map(known -> ", the water rises by " + Wording.kelvin(known.value()))
                      .orElse("");
              return Outcome.flagged(
                  flag(
                      spell.startMs(),
                      spell.endMs(),
                      flow,
                      least,
                      least.sentence(flow)
                          + " for "
                          + Wording.duration(spell.lengthS())
                          + " of steady running"
                          + rise,
                      channels(evidence)));
            })
        .orElseGet(Outcome::clear);
  }

  /** What the nameplate promises, or would promise in the best air where that is not measured. */
  private static Optional<Estimate> mostHeatW(Duty duty, Rig rig) {
    return duty.of(DutyFigure.EXPECTED_HEAT)
        .or(() -> duty.of(DutyFigure.WATER_IN).flatMap(water -> MostHeat.inTheBestAir(rig, water)));
  }

  private Outcome byRise(List<Duty> told, LeastFlow least, Rig rig) {
    return Spell.where(told, duty -> riseTellsOfLowFlow(duty, least, rig))
        .map(
            spell -> {
              Estimate rise = spell.mean().of(DutyFigure.RISE).orElseThrow();
              Estimate atLeast = least.rise(mostHeatW(spell.mean(), rig).orElseThrow());
              String heat =
                  spell.mean().has(DutyFigure.EXPECTED_HEAT)
                      ? " the expected heat would give only "
                      : " the nameplate's heat in the best air would give only ";
              double flow = least.flowM3PerS() * atLeast.value() / rise.value();
              return Outcome.flagged(
                  flag(
                      spell.startMs(),
                      spell.endMs(),
                      flow,
                      least,
                      "The water rises by "
                          + Wording.kelvin(rise.value())
                          + "; even at "
                          + Wording.flow(least.flowM3PerS())
                          + heat
                          + Wording.kelvin(atLeast.value())
                          + ", so no more than about "
                          + Wording.flow(flow)
                          + " goes through the heater",
                      RISE));
            })
        .orElseGet(Outcome::clear);
  }

  private static boolean riseTellsOfLowFlow(Duty duty, LeastFlow least, Rig rig) {
    Estimate rise = duty.of(DutyFigure.RISE).orElseThrow();
    Estimate limit = least.rise(mostHeatW(duty, rig).orElseThrow());
    Estimate excess =
        new Estimate(
            rise.value() - MATERIAL_RISE * limit.value(),
            Math.hypot(rise.standard(), limit.standard()));
    return Doubt.above(excess, 0);
  }

  /** A heater starved of water may trip before it runs steadily, or wait for flow all along. */
  private Outcome withoutSteadyRunning(Evidence evidence, LeastFlow least) {
    OptionalDouble flow =
        evidence.cycles().isEmpty()
            ? WaterRunning.flowWhileCirculating(evidence)
            : WaterRunning.flowWhileCompressing(evidence);
    if (flow.isEmpty()) {
      return inShortRuns(evidence, least);
    }
    Estimate mean =
        new Estimate(flow.getAsDouble(), WaterRunning.uncertainty(evidence, flow.getAsDouble()));
    if (!MeasuredFlow.isLow(mean, least)) {
      return Outcome.clear();
    }
    return Outcome.flagged(
        flag(
            evidence.recording().startMs(),
            evidence.recording().endMs(),
            mean.value(),
            least,
            least.sentence(mean.value()) + "; the heater never came to steady running",
            channels(evidence)));
  }

  /** Where a protection ends each run before the flow of one could be averaged. */
  private Outcome inShortRuns(Evidence evidence, LeastFlow least) {
    Optional<MeasuredFlow> flow =
        MeasuredFlow.in(evidence).filter(one -> one.channel() == Channel.FLOW_HEATER);
    List<Stretch> runs = WaterRunning.runsInMovingWater(evidence);
    if (flow.isEmpty() || runs.size() < SHORT_RUNS) {
      return Outcome.notEnoughData("no flow through the heater known while water runs");
    }
    List<Stretch> low = runs.stream().filter(flow.get()::isLow).toList();
    if (2 * low.size() <= runs.size()) {
      return Outcome.clear();
    }
    Timeline timeline = evidence.timeline();
    double mean =
        low.stream().mapToDouble(run -> flow.get().over(run).value()).average().orElseThrow();
    return Outcome.flagged(
        flag(
            timeline.timeMs(low.get(0).from()),
            timeline.timeMs(low.get(low.size() - 1).to() - 1),
            mean,
            least,
            least.sentence(mean)
                + " in "
                + low.size()
                + " of "
                + runs.size()
                + " compressor runs, all too short to become steady",
            channels(evidence)));
  }

  private static Set<Channel> channels(Evidence evidence) {
    return evidence.timeline().has(Channel.FLOW_HEATER)
        ? Set.of(Channel.FLOW_HEATER)
        : Set.of(Channel.FLOW_TOTAL, Channel.PRESSURE_FILTER);
  }

  private Flag flag(
      long startMs,
      long endMs,
      double flowM3PerS,
      LeastFlow least,
      String evidence,
      Set<Channel> channels) {
    boolean byRise = channels.equals(RISE);
    return new Flag(
        id(),
        Side.WATER,
        flowM3PerS < GRAVE_SHARE * least.flowM3PerS() ? Severity.ALARM : Severity.WARNING,
        startMs,
        endMs,
        evidence,
        byRise ? Stream.concat(CAUSES.stream(), Stream.of(LOOSE_CLIP)).toList() : CAUSES,
        byRise ? SIT_TIGHT + NEXT_CHECK : NEXT_CHECK,
        channels);
  }
}
