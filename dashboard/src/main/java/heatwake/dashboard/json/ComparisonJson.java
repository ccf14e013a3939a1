package heatwake.dashboard.json;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import heatwake.analysis.compare.Comparison;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import java.util.List;
import java.util.Locale;

/** Writes a comparison of two runs as JSON; a figure that could not be computed is absent. */
public final class ComparisonJson {
  private static final Unit ONE = Unit.of(Quantity.RATIO, "1");
  private static final Unit CELSIUS = Unit.of(Quantity.TEMPERATURE, "Cel");

  private ComparisonJson() {}

  /** The comparison as a JSON object; uncertainties are expanded with k = 2. */
  public static ObjectNode of(Comparison comparison) {
    Figures figures = new Figures();
    figures.node().put("run_a", comparison.runA()).put("run_b", comparison.runB());
    figures.node().put("outcome", comparison.outcome().name().toLowerCase(Locale.ROOT));
    figures.put("heat_change", "heat_change_u", ONE, comparison.heatChange());
    figures.put("cop_change", "cop_change_u", ONE, comparison.copChange());
    figures.put("ratio_a", "ratio_a_u", ONE, comparison.heatRatioA());
    figures.put("ratio_b", "ratio_b_u", ONE, comparison.heatRatioB());
    figures.put("air_a_Cel", CELSIUS, comparison.airA());
    figures.put("air_b_Cel", CELSIUS, comparison.airB());
    figures.put("water_in_a_Cel", CELSIUS, comparison.waterA());
    figures.put("water_in_b_Cel", CELSIUS, comparison.waterB());
    put(figures.node(), "heat_doubts", comparison.heatDoubts());
    put(figures.node(), "cop_doubts", comparison.copDoubts());
    put(figures.node(), "missing", comparison.missing());
    return figures.node();
  }

  private static void put(ObjectNode node, String key, List<String> sentences) {
    ArrayNode array = node.putArray(key);
    sentences.forEach(array::add);
  }
}
