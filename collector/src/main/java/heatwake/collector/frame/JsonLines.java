package heatwake.collector.frame;

import java.util.Optional;

/** One JSON object a line. */
final class JsonLines implements LineDecoder {
  @Override
  public Line decode(String text) {
    Optional<JsonMessage> json = JsonMessage.parse(text).filter(JsonMessage::isObject);
    return json.isPresent()
        ? new Line.Fields(json.get(), Optional.empty())
        : new Line.Garbage("not a JSON object");
  }

  @Override
  public boolean provesItself() {
    return true;
  }
}
