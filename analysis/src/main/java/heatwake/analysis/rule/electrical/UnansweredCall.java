package heatwake.analysis.rule.electrical;

import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.HeatCall;
import heatwake.analysis.rule.water.MeasuredFlow;
import heatwake.analysis.timeline.Stretch;
import java.util.Optional;

/**
 * Whether a fan that runs alone proves that heat is called for and no compressor answers: it is the
 * fan, it leads no start, and nothing else holds the compressor back.
 */
final class UnansweredCall {
  /** In frost a fan alone may thaw the coil for so long; common practice, s. */
  private static final double THAWS_WITHIN_S = 3600;

  /**
   * Any thermostat calls for heat with the water this far below the set temperature; common
   * practice: differentials of 0.3 to 2 K, K.
   */
  private static final double CALLS_FOR_CERTAIN_K = 2.5;

  /** Most do with the water this far below, K; common practice, as above. */
  private static final double MOSTLY_CALLS_K = 1;

  /**
   * A fan that comes on out of a rest in which no crankcase heater was on waits so long, s; ours.
   */
  private static final double OUT_OF_A_REST_S = 1200;

  private final Evidence evidence;
  private final FanAlone fan;
  private final FanDraw draw;
  private final MotorDraw motor;
  private final Optional<MeasuredFlow> flow;

  UnansweredCall(Evidence evidence, FanDraw draw, MotorDraw motor) {
    this.evidence = evidence;
    this.fan = draw.alone();
    this.draw = draw;
    this.motor = motor;
    this.flow = MeasuredFlow.in(evidence);
  }

  /** Whether a spell of a fan alone proves it. */
  boolean isProvedBy(Stretch spell) {
    StartTries tries = motor.besideFan(spell);
    HeatCall call = HeatCall.over(evidence, spell.from(), spell.to());
    return !startFollows(spell, tries)
        && isCalledFor(spell, tries, call)
        && !mayBeThawing(spell)
        && (tries.areSeveral() || (hasItsFlow(spell) && isTheFan(spell, call)));
  }

  /** Whether it leads a start; what the end of the run cuts off may be one more try. */
  private boolean startFollows(Stretch spell, StartTries tries) {
    return fan.endsInAStart(spell) && !(tries.areSeveral() && fan.isCutOffAfter(spell));
  }

  /**
   * Whether heat is called for. After a run of the compressor the pool may simply be warm: then
   * only a known set temperature, or the tries of the control, show a call.
   */
  private boolean isCalledFor(Stretch spell, StartTries tries, HeatCall call) {
    return tries.areSeveral()
        || (call.mayCall() && (call.belowSetK().isPresent() || !fan.followsARun(spell)));
  }

  private boolean mayBeThawing(Stretch spell) {
    return fan.mayThaw(spell) && seconds(spell) < THAWS_WITHIN_S;
  }

  /** Whether nothing shows that too little water holds the heater back. */
  boolean hasItsFlow(Stretch spell) {
    return flow.filter(known -> known.isLow(spell)).isEmpty();
  }

  private boolean isTheFan(Stretch spell, HeatCall call) {
    return !draw.other().isIn(spell) && !mayBeCrankcaseHeater(spell, call);
  }

  /** Whether it draws so little, and neither the water nor a rest before tells them apart. */
  private boolean mayBeCrankcaseHeater(Stretch spell, HeatCall call) {
    return SmallDraw.isIn(evidence, draw.channel(), spell)
        && !isCertain(call)
        && !isLikely(spell, call);
  }

  /** Whether heat is called for though nothing but the water says so. */
  private boolean isCertain(HeatCall call) {
    return call.calls() && call.belowSetK().getAsDouble() > CALLS_FOR_CERTAIN_K && neverRan();
  }

  /** Whether the water says so, and what draws so little is no crankcase heater. */
  private boolean isLikely(Stretch spell, HeatCall call) {
    return seconds(spell) >= OUT_OF_A_REST_S
        && call.isBelowSetBy(MOSTLY_CALLS_K)
        && neverRan()
        && draw.quiet().isBefore(spell);
  }

  private boolean neverRan() {
    return evidence.phases().stream().noneMatch(span -> span.phase().compressorRuns());
  }

  private double seconds(Stretch spell) {
    return spell.durationS(evidence.timeline());
  }
}
