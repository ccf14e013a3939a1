package heatwake.dashboard.json;

import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;
import heatwake.analysis.uncertainty.Estimate;
import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Optional;
import java.util.OptionalDouble;

/** Puts figures into a JSON object in a stated unit; a figure that is not there stays absent. */
final class Figures {
  private static final MathContext SIX_DIGITS = new MathContext(6);

  private final ObjectNode node = JsonNodeFactory.instance.objectNode();

  ObjectNode node() {
    return node;
  }

  /** A figure and, under a key of its own, its expanded uncertainty. */
  void put(String key, String uncertaintyKey, Unit unit, Optional<Estimate> figure) {
    figure
        .filter(estimate -> Double.isFinite(estimate.value()))
        .ifPresent(
            estimate -> {
              node.put(key, rounded(unit.fromSi(estimate.value())));
              if (Double.isFinite(estimate.standard())) {
                node.put(uncertaintyKey, rounded(span(unit, estimate.expanded())));
              }
            });
  }

  /** A figure without a stated uncertainty. */
  void put(String key, Unit unit, OptionalDouble figure) {
    if (figure.isPresent() && Double.isFinite(figure.getAsDouble())) {
      node.put(key, rounded(unit.fromSi(figure.getAsDouble())));
    }
  }

  /** A width in SI as a width in a unit, so without the unit's offset. */
  private static double span(Unit unit, double si) {
    return unit.quantity() == Quantity.TEMPERATURE ? si / unit.factor() : unit.fromSi(si);
  }

  /** Six significant digits: more than any probe has, few enough to read. */
  static double rounded(double value) {
    return Double.isFinite(value) ? new BigDecimal(value).round(SIX_DIGITS).doubleValue() : value;
  }
}
