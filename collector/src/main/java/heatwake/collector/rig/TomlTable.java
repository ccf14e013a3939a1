package heatwake.collector.rig;

import com.fasterxml.jackson.databind.JsonNode;
import heatwake.analysis.quantity.Measure;
import heatwake.analysis.quantity.Numeral;
import heatwake.analysis.quantity.Quantity;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.mistake.NearestWord;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** One table of a rig file, read strictly: every mistake names file, line and mend. */
final class TomlTable {
  private final RigText rig;
  private final JsonNode node;
  private final String place;

  TomlTable(RigText rig, JsonNode node, String place) {
    this.rig = rig;
    this.node = node;
    this.place = place;
  }

  /** Refuses any key but these. */
  TomlTable only(List<String> keys) {
    for (Iterator<String> names = node.fieldNames(); names.hasNext(); ) {
      String name = names.next();
      if (!keys.contains(name)) {
        throw mistake(
            name, "unknown key \"" + name + "\"" + inTable() + NearestWord.advice(name, keys));
      }
    }
    return this;
  }

  boolean has(String key) {
    return node.has(key);
  }

  /** A text that must not be blank. */
  Optional<String> text(String key) {
    if (!node.has(key)) {
      return Optional.empty();
    }
    JsonNode value = node.get(key);
    if (!value.isTextual()) {
      throw mistake(key, key + " must be text in quotes");
    }
    if (value.textValue().isBlank()) {
      throw mistake(key, key + " is empty; fill it in or leave the line out");
    }
    return Optional.of(value.textValue());
  }

  /** A text that must be there. */
  String needText(String key, String example) {
    return text(key)
        .orElseThrow(
            () -> mistake("no " + key + inTable() + "; add " + key + " = \"" + example + "\""));
  }

  /** The name of a file or device. */
  Optional<String> fileName(String key) {
    Optional<String> name = text(key);
    if (name.isPresent() && name.get().chars().anyMatch(Character::isISOControl)) {
      throw mistake(key, key + " holds a line break or another sign that no name has; take it out");
    }
    return name;
  }

  /** The name of a file or device that must be there. */
  String needFileName(String key, String example) {
    return fileName(key).orElseGet(() -> needText(key, example));
  }

  /** A quantity in SI that must lie within limits, given in SI too. */
  OptionalDouble measure(String key, Quantity quantity, double least, double greatest) {
    Optional<String> text = text(key);
    if (text.isEmpty()) {
      return OptionalDouble.empty();
    }
    double si;
    try {
      si = Measure.parse(quantity, text.get());
    } catch (IllegalArgumentException e) {
      throw mistake(key, key + ": " + e.getMessage());
    }
    if (!(si >= least && si <= greatest)) {
      throw mistake(
          key,
          key
              + " = \""
              + text.get()
              + "\" cannot be right; it must lie between "
              + inStoredUnit(quantity, least)
              + " and "
              + inStoredUnit(quantity, greatest));
    }
    return OptionalDouble.of(si);
  }

  /** A quantity that must be there. */
  double needMeasure(String key, Quantity quantity, double least, double greatest) {
    return measure(key, quantity, least, greatest)
        .orElseThrow(
            () ->
                mistake(
                    "no "
                        + key
                        + inTable()
                        + "; add it, for example "
                        + key
                        + " = \""
                        + inStoredUnit(quantity, (least + Math.min(greatest, 1e6)) / 2)
                        + "\""));
  }

  private static String inStoredUnit(Quantity quantity, double si) {
    double stored = Math.rint(quantity.storedUnit().fromSi(si) * 1000) / 1000;
    String number =
        stored == Math.rint(stored) ? Long.toString((long) stored) : Double.toString(stored);
    return number + Numeral.after(quantity.storedUnit().code());
  }

  /** A bare number. */
  OptionalDouble number(String key) {
    if (!node.has(key)) {
      return OptionalDouble.empty();
    }
    JsonNode value = node.get(key);
    if (!value.isNumber() || !Double.isFinite(value.doubleValue())) {
      throw mistake(key, key + " must be a number without quotes");
    }
    return OptionalDouble.of(value.doubleValue());
  }

  /** A list of bare numbers; empty if it is not there. */
  List<Double> numbers(String key) {
    if (!node.has(key)) {
      return List.of();
    }
    List<Double> numbers = new ArrayList<>();
    for (JsonNode value : node.get(key)) {
      numbers.add(value.isNumber() ? value.doubleValue() : Double.NaN);
    }
    if (numbers.isEmpty() || !numbers.stream().allMatch(Double::isFinite)) {
      throw mistake(key, key + " must be a list of numbers without quotes, like [1.0, 2.0]");
    }
    return numbers;
  }

  /** A whole number within limits. */
  OptionalInt whole(String key, int least, int greatest) {
    if (!node.has(key)) {
      return OptionalInt.empty();
    }
    JsonNode value = node.get(key);
    if (!value.isIntegralNumber()
        || !value.canConvertToInt()
        || value.intValue() < least
        || value.intValue() > greatest) {
      throw mistake(
          key, key + " must be a whole number from " + least + " to " + greatest + ", no quotes");
    }
    return OptionalInt.of(value.intValue());
  }

  boolean flag(String key, boolean ifAbsent) {
    if (!node.has(key)) {
      return ifAbsent;
    }
    if (!node.get(key).isBoolean()) {
      throw mistake(key, key + " must be true or false, without quotes");
    }
    return node.get(key).booleanValue();
  }

  /** One of a few words, as the enum constant that is written so in the rig. */
  <E extends Enum<E>> Optional<E> choice(String key, Class<E> words) {
    return text(key)
        .map(
            text -> {
              List<String> known = new ArrayList<>();
              for (E word : words.getEnumConstants()) {
                String spelt = RigText.spelling(word);
                if (spelt.equals(text)) {
                  return word;
                }
                known.add(spelt);
              }
              throw mistake(
                  key,
                  key + " = \"" + text + "\" is not known; use one of " + String.join(", ", known));
            });
  }

  /** A table inside this one, written {@code [key]}. */
  Optional<TomlTable> table(String key) {
    if (!node.has(key)) {
      return Optional.empty();
    }
    if (!node.get(key).isObject()) {
      throw mistake(key, "\"" + key + "\" must be one table; write [" + inner(key) + "]");
    }
    return Optional.of(new TomlTable(rig, node.get(key), inner(key)));
  }

  /** Repeated tables inside this one, written {@code [[key]]}. */
  List<TomlTable> tables(String key) {
    if (!node.has(key)) {
      return List.of();
    }
    JsonNode array = node.get(key);
    if (!array.isArray()) {
      throw mistake(key, "\"" + key + "\" must be repeated tables; write [[" + inner(key) + "]]");
    }
    List<TomlTable> tables = new ArrayList<>();
    for (int i = 0; i < array.size(); i++) {
      if (!array.get(i).isObject()) {
        throw mistake(key, "\"" + key + "\" must hold tables; write [[" + inner(key) + "]]");
      }
      tables.add(new TomlTable(rig, array.get(i), inner(key) + "[" + i + "]"));
    }
    return tables;
  }

  /** A mistake at a key of this table. */
  MistakeException mistake(String key, String message) {
    return MistakeException.at(rig.name(), rig.lines().of(inner(key), place), message);
  }

  /** A mistake of the table as a whole. */
  MistakeException mistake(String message) {
    return MistakeException.at(rig.name(), rig.lines().of(place, ""), message);
  }

  private String inner(String key) {
    return place.isEmpty() ? key : place + "." + key;
  }

  private String inTable() {
    return place.isEmpty() ? "" : " in [" + place.replaceAll("\\[\\d+]", "") + "]";
  }
}
