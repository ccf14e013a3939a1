package heatwake.collector.frame;

import java.util.List;
import java.util.Optional;

/** One message, taken apart into named fields. */
public interface Message {
  /**
   * The text of one field, if the message has it.
   *
   * @param name a key, a column's name or number, or a JSON pointer, as the format has it
   */
  Optional<String> field(String name);

  /** Names of the fields that hold a value, in order. */
  List<String> names();
}
