package heatwake.analysis.rule.airflow;

import heatwake.analysis.air.IcingAir;
import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.IcedCoil;
import heatwake.analysis.rule.Wording;
import java.util.List;
import java.util.Set;

/** What is told of ice that is not melted in time. */
final class FrostingFlag {
  private final String rule;

  FrostingFlag(String rule) {
    this.rule = rule;
  }

  /** Heat that is lost in each of some stretches. */
  Flag lost(List<IcingStretch> lost) {
    return over(lost, sentence(lost));
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

  /** Stretches of running that end with ice on the coil. */
  Flag iced(IcedCoil coil) {
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
        rule,
        coil.isTold() ? Side.AIRFLOW : Side.UNDECIDED,
        Severity.WARNING,
        ends.startMs(),
        ends.endMs(),
        evidence,
        advice.causes(),
        advice.nextCheck(),
        Set.of(Channel.PRESSURE_SUCTION, Channel.AIR_IN));
  }

  /** Heat that falls over some stretches. */
  Flag over(List<IcingStretch> icy, String evidence) {
    boolean warm = icy.stream().allMatch(one -> one.airK() > IcingAir.NO_SOUND_COIL_ABOVE_K);
    IceAdvice advice = warm ? IceAdvice.IN_WARM_AIR : IceAdvice.IN_FROST;
    return new Flag(
        rule,
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
