package heatwake.collector.frame;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/**
 * The payload of a message without lines: a bare number, or JSON. The whole text is the field with
 * the empty name; every other field is one of the JSON's.
 */
public final class Payload implements Message {
  /** Name of the field that is the whole payload. */
  public static final String WHOLE = "";

  private final String text;
  private Optional<JsonMessage> json;

  private Payload(String text) {
    this.text = text;
  }

  /** Reads a payload as UTF-8; empty if it is not. */
  public static Optional<Payload> decode(byte[] bytes) {
    try {
      return Optional.of(
          new Payload(
              StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString()));
    } catch (CharacterCodingException notText) {
      return Optional.empty();
    }
  }

  /** The whole payload. */
  public String text() {
    return text;
  }

  @Override
  public Optional<String> field(String name) {
    if (name.equals(WHOLE)) {
      return Optional.of(text);
    }
    return json().flatMap(message -> message.field(name));
  }

  @Override
  public List<String> names() {
    return json().filter(JsonMessage::isObject).map(JsonMessage::names).orElse(List.of(WHOLE));
  }

  private Optional<JsonMessage> json() {
    if (json == null) {
      json = JsonMessage.parse(text);
    }
    return json;
  }
}
