package heatwake.analysis.rule.airflow;

import heatwake.analysis.air.IcingAir;
import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.IcedCoil;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Starvation;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Timeline;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * Evaporating below freezing with heat that falls until a defrost, or from start to start; or ice
 * where no sound coil has any.
 */
public final class Frosting implements Rule {
  @Override
  public String id() {
    return "frosting";
  }

  @Override
  public String summary() {
    return "The coil evaporates below freezing and the heat falls until a defrost, or from start"
        + " to start: ice that is not melted in time.";
  }

  @Override
  public String needs() {
    return "heat or the water's rise, and pressure-suction with heater.refrigerant (or air-in)";
  }

  @Override
  public String limits() {
    return "Raised when, evaporating below -0.5 °C (without suction pressure: in air below 7 °C),"
        + " heat falls, by the expanded uncertainty of the rises it is told from, by more than 35 % between defrosts (sound controls defrost after 10 to"
        + " 25 %: common practice), by more than 25 % in a stretch of 90 min without one (in one of 4 h by 25 % as read, and by 12 % by that uncertainty: ours), or its"
        + " best by more than 20 % over three starts (ours), 2.5 % for each kelvin of air taken"
        + " off, and the evaporating temperature falls away from the air by 2 K (ours); or by more"
        + " than 10 % while it falls away by 8 K (sound controls that watch the coil let it fall by 3"
        + " to 6 K: common practice); or, in a stretch of 4 h without a defrost at the same power (within"
        + " 5 %), by more than 12 % while the coil falls away by 5 K, both as means of the last"
        + " hour (controls by the clock defrost each half to two hours, others before the heat stays"
        + " lost: common practice), unless superheat is above 12 K beyond doubt (see low-charge);"
        + " or when two or"
        + " more stretches of running end with the coil below -3 °C, in air above 12 °C (no sound"
        + " coil ices there: common practice) or more than 20 K below the air (ours), unless"
        + " superheat above 12 K (where it is not known, subcooling below 1.5 K) shows it"
        + " short of refrigerant; or, up to 20 K below the air, steady heat of 92 % of the"
        + " nameplate's and more to the end shows the coil to be laid out so (ours). Heat that falls by no more than the power is a compressor that slows down, and heat that"
        + " is gone within 4 min is no ice (ours). The last 12 min before the end of a run may be a defrost that is not"
        + " over (1 to 12 min: common practice) and are left out.";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Optional<double[]> heat = evidence.trace(Trace.Kind.HEAT);
    Optional<double[]> output = heat.isPresent() ? heat : evidence.trace(Trace.Kind.RISE);
    Optional<double[]> evaporating = evidence.trace(Trace.Kind.EVAPORATING);
    Channel air = evidence.timeline().preferred(Channel.AIR_IN, Channel.AIR_AMBIENT);
    if (output.isEmpty()) {
      return iced(evidence)
          .map(Outcome::flagged)
          .orElseGet(() -> Outcome.notEnoughData("neither heat nor the water's rise known"));
    }
    if (evaporating.isEmpty() && !evidence.timeline().has(air)) {
      return Outcome.notEnoughData(
          "neither evaporating temperature nor air temperature known, so ice cannot be told");
    }
    List<IcingStretch> stretches =
        new IcingStretches(
                evidence.timeline(),
                output.get(),
                evaporating,
                heatersPower(evidence),
                air,
                evidence
                    .trace(Trace.Kind.RISE)
                    .orElseGet(() -> Timeline.unknown(evidence.timeline().size())),
                RiseDoubt.of(evidence))
            .of(evidence.phases());
    List<IcingStretch> icy = stretches.stream().filter(IcingStretch::ices).toList();
    List<IcingStretch> lost = icy.stream().filter(one -> isIce(evidence, one)).toList();
    if (!lost.isEmpty()) {
      return Outcome.flagged(flag(lost, sentence(lost)));
    }
    return iced(evidence)
        .or(() -> FallingPeaks.of(icy).map(falling -> flag(icy, falling.words())))
        .map(Outcome::flagged)
        .orElseGet(Outcome::clear);
  }

  private static boolean isIce(Evidence evidence, IcingStretch stretch) {
    return stretch.isLost() || (stretch.keepsIce() && !isStarved(evidence, stretch));
  }

  /** Whether the coil is short of refrigerant then, as a leak makes it; see low-charge. */
  private static boolean isStarved(Evidence evidence, IcingStretch stretch) {
    return evidence.duty().stream()
        .filter(duty -> duty.endMs() > stretch.startMs() && duty.startMs() < stretch.endMs())
        .anyMatch(Starvation::isCertain);
  }

  /** Without what else is on its meter; NaN where it is not known. */
  private static double[] heatersPower(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    double besideW = evidence.load().watts().orElse(0);
    return Arrays.stream(timeline.of(Channel.POWER)).map(watts -> watts - besideW).toArray();
  }

  /** Ice on a coil that is not short of refrigerant; for one that is see low-charge. */
  private Optional<Flag> iced(Evidence evidence) {
    return IcedCoil.of(evidence).filter(coil -> !coil.isStarved()).map(this::flag);
  }

  /** Of the stretch that lost most; the first of several that lost as much. */
  private static String sentence(List<IcingStretch> lost) {
    IcingStretch worst =
        lost.stream().reduce((one, other) -> other.loss() > one.loss() ? other : one).orElseThrow();
    return "Heat fell by "
        + Wording.percent(worst.loss())
        + " in "
        + Wording.duration((worst.endMs() - worst.startMs()) / 1e3)
        + (worst.defrosted() ? " before a defrost" : " without a defrost")
        + (Double.isNaN(worst.evaporatingK())
            ? " in air of " + Wording.celsius(worst.airK())
            : ", evaporating at " + Wording.celsius(worst.evaporatingK()))
        + (lost.size() > 1 ? "; the same " + lost.size() + " times" : "");
  }

  private Flag flag(IcedCoil coil) {
    Duty ends = coil.ends();
    String evidence =
        "Evaporating at "
            + Wording.celsius(ends.of(DutyFigure.EVAPORATING).orElseThrow().value())
            + " in air of "
            + Wording.celsius(ends.of(DutyFigure.AIR).orElseThrow().value())
            + " at the end of "
            + coil.times()
            + " stretches of running"
            + (coil.inWarmAir() ? IceAdvice.NO_SOUND_COIL : "");
    IceAdvice advice = coil.inWarmAir() ? IceAdvice.IN_WARM_AIR : IceAdvice.IN_FROST;
    return new Flag(
        id(),
        coil.isTold() ? Side.AIRFLOW : Side.UNDECIDED,
        Severity.WARNING,
        ends.startMs(),
        ends.endMs(),
        evidence,
        advice.causes(),
        advice.nextCheck(),
        Set.of(Channel.PRESSURE_SUCTION, Channel.AIR_IN));
  }

  private Flag flag(List<IcingStretch> icy, String evidence) {
    boolean warm = icy.stream().allMatch(one -> one.airK() > IcingAir.NO_SOUND_COIL_ABOVE_K);
    IceAdvice advice = warm ? IceAdvice.IN_WARM_AIR : IceAdvice.IN_FROST;
    return new Flag(
        id(),
        Side.AIRFLOW,
        Severity.WARNING,
        icy.get(0).startMs(),
        icy.get(icy.size() - 1).endMs(),
        warm
            ? evidence
                + " in air of "
                + Wording.celsius(icy.get(0).airK())
                + IceAdvice.NO_SOUND_COIL
            : evidence,
        advice.causes(),
        advice.nextCheck(),
        Set.of(Channel.WATER_IN, Channel.WATER_OUT, Channel.PRESSURE_SUCTION));
  }
}
