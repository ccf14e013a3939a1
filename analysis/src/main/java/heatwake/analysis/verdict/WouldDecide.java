package heatwake.analysis.verdict;

import heatwake.analysis.duty.Symptom;
import heatwake.analysis.finding.Side;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * What would tell the likeliest cause from its rivals: symptoms that are not known and differ among
 * them, and where the likeliest leads none of them clearly, what shows each of them on site.
 */
final class WouldDecide {
  private WouldDecide() {}

  /**
   * One sentence each.
   *
   * @param toKnow what it takes to know a symptom
   */
  static List<String> of(Attribution attribution, ToKnow toKnow) {
    Cause first = attribution.likeliest();
    Set<Symptom> telling = new LinkedHashSet<>();
    for (Cause rival : attribution.rivals()) {
      telling.addAll(telling(first, rival, attribution));
    }
    List<String> texts = new ArrayList<>(toKnow.of(telling));
    if (attribution.side() == Side.UNDECIDED) {
      texts.add(SiteCheck.of(first));
      attribution.rivals().forEach(rival -> texts.add(SiteCheck.of(rival)));
    }
    return texts;
  }

  private static List<Symptom> telling(Cause one, Cause other, Attribution attribution) {
    return one.row().keySet().stream()
        .filter(symptom -> !attribution.grades().containsKey(symptom))
        .filter(symptom -> one.row().get(symptom) != other.row().get(symptom))
        .toList();
  }
}
