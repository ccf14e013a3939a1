package heatwake.dashboard.present;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Reason;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Verdict;
import java.util.List;

/**
 * The verdict as a person reads it.
 *
 * @param headline whose side it is on
 * @param sureness how sure, in words and per cent; empty when nothing is decided
 * @param because the reasons, the strongest first
 * @param wouldDecide what would make it surer
 * @param tone how it stands
 */
public record VerdictWords(
    String headline, String sureness, List<String> because, List<String> wouldDecide, Tone tone) {

  /** A verdict in words. What its flags explain besides is said with them, not here. */
  public static VerdictWords of(Verdict verdict) {
    return new VerdictWords(
        headline(verdict),
        verdict.side() == Side.UNDECIDED ? "" : sureness(verdict),
        verdict.reasons().stream().map(VerdictWords::inWords).toList(),
        verdict.wouldDecide(),
        switch (verdict.side()) {
          case HEALTHY -> Tone.GOOD;
          case UNDECIDED -> Tone.PLAIN;
          default -> Tone.WARNING;
        });
  }

  private static String inWords(Reason reason) {
    if (reason instanceof Reason.Blames blames) {
      return Names.ofRule(blames.flag().rule()) + ": " + blames.flag().ownEvidence();
    }
    if (reason instanceof Reason.Beside beside) {
      Flag flag = beside.flag();
      return "Also "
          + Names.midSentence(Names.ofRule(flag.rule()))
          + " ("
          + flag.side().id()
          + "): "
          + flag.ownEvidence();
    }
    if (reason instanceof Reason.Notes notes) {
      return notes.flag().ownEvidence();
    }
    return Names.sentenceCase(reason.text());
  }

  private static String headline(Verdict verdict) {
    boolean isBesideAnOffset =
        verdict.reasons().stream()
            .anyMatch(
                reason ->
                    reason instanceof Reason.Notes notes
                        && notes.flag().rule().equals("probe-offset"));
    return verdict.side() == Side.HEALTHY && isBesideAnOffset
        ? "The heater seems sound, but a probe is off"
        : headline(verdict.side());
  }

  private static String headline(Side side) {
    return switch (side) {
      case HEALTHY -> "Nothing wrong found";
      case WATER -> "Water side: flow, filter, bypass or scale";
      case REFRIGERANT -> "Refrigerant side";
      case AIRFLOW -> "Air side: coil, fan or place";
      case ELECTRICAL -> "Electrical side";
      case CONTROL -> "Control: thermostat, switches or settings";
      case SCHEDULE -> "Timer: the pump's hours limit the heat";
      case POOL -> "The pool loses the heat";
      case MEASUREMENT -> "The probes: mend the measurement first";
      case UNDECIDED -> "Not decided";
    };
  }

  /**
   * How sure the side is; where flags of several sides stand, each beyond doubt by itself, it is
   * only open which of them comes first.
   */
  private static String sureness(Verdict verdict) {
    boolean several =
        verdict.confidence() < 0.5
            && verdict.reasons().stream().anyMatch(VerdictWords::isTroubleOfAnotherSide);
    return (several ? "that this comes first: " : "") + sureness(verdict.confidence());
  }

  private static boolean isTroubleOfAnotherSide(Reason reason) {
    return reason instanceof Reason.Beside beside
        && beside.flag().severity() != Severity.INFO
        && beside.flag().side() != Side.UNDECIDED;
  }

  private static String sureness(double confidence) {
    String word =
        confidence >= 0.9
            ? "very likely"
            : confidence >= 0.7
                ? "likely"
                : confidence >= 0.5 ? "more likely than not" : "a guess so far";
    return word + ", confidence " + Figure.fixed(confidence * 100, 0) + " %";
  }
}
