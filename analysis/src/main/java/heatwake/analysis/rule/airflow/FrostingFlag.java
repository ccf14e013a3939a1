package heatwake.analysis.rule.airflow;

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
  private static final List<String> CAUSES =
      List.of(
          "defrost that does not come: coil sensor loose or control faulty",
          "dirty coil or weak fan, so that the coil runs colder than it should",
          "reversing valve that does not change over",
          "air colder than the heater is made for");

  private static final String NEXT_CHECK =
      "Look at the coil just before a defrost: ice right through the fins means that defrosts"
          + " come too late. Check the defrost sensor's seat.";

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
            + (coil.inWarmAir() ? "; a sound coil does not ice in such air" : "");
    List<String> causes =
        coil.inWarmAir()
            ? List.of(
                "dirty coil fins",
                "fan weak, slow or fitted wrong way",
                "too little refrigerant, or an expansion valve letting too little through")
            : CAUSES;
    return new Flag(
        rule,
        coil.isTold() ? Side.AIRFLOW : Side.UNDECIDED,
        Severity.WARNING,
        ends.startMs(),
        ends.endMs(),
        evidence,
        causes,
        coil.inWarmAir()
            ? "Look through the coil against the light and wash it if needed; see that the fan turns"
                + " the right way at full speed (power off and fan still before reaching in)."
            : NEXT_CHECK,
        Set.of(Channel.PRESSURE_SUCTION, Channel.AIR_IN));
  }

  /** Heat that falls over some stretches. */
  Flag over(List<IcingStretch> icy, String evidence) {
    return new Flag(
        rule,
        Side.AIRFLOW,
        Severity.WARNING,
        icy.get(0).startMs(),
        icy.get(icy.size() - 1).endMs(),
        evidence,
        CAUSES,
        NEXT_CHECK,
        Set.of(Channel.WATER_IN, Channel.WATER_OUT, Channel.PRESSURE_SUCTION));
  }
}
