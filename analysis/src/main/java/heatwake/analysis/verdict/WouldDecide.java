package heatwake.analysis.verdict;

import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import java.util.ArrayList;
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
   * @param clipped the channels that are read already
   */
  static List<String> of(Attribution attribution, Set<Channel> clipped) {
    Cause first = attribution.likeliest();
    List<String> texts = new ArrayList<>();
    for (Cause rival : attribution.rivals()) {
      texts.addAll(telling(first, rival, attribution, clipped));
    }
    if (attribution.side() == Side.UNDECIDED) {
      texts.add(SiteCheck.of(first));
      attribution.rivals().forEach(rival -> texts.add(SiteCheck.of(rival)));
    }
    return texts;
  }

  private static List<String> telling(
      Cause one, Cause other, Attribution attribution, Set<Channel> clipped) {
    return one.row().keySet().stream()
        .filter(symptom -> !attribution.grades().containsKey(symptom))
        .filter(symptom -> one.row().get(symptom) != other.row().get(symptom))
        .map(symptom -> SymptomText.toKnow(symptom, clipped))
        .toList();
  }
}
