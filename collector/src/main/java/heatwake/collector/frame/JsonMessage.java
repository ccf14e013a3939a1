package heatwake.collector.frame;

import com.fasterxml.jackson.core.JsonPointer;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/**
 * A JSON text (RFC 8259). A field is named by a JSON pointer (RFC 6901) or, without a leading
 * slash, by a key of the outermost object.
 */
public final class JsonMessage implements Message {
  private static final int DEEPEST = 50;
  private static final int MOST_NAMES = 100;

  private static final ObjectMapper MAPPER = mapper();

  /** Pointers come from rigs, so there are few of them. */
  private static final Map<String, JsonPointer> POINTERS = new ConcurrentHashMap<>();

  private final JsonNode root;

  private JsonMessage(JsonNode root) {
    this.root = root;
  }

  private static ObjectMapper mapper() {
    JsonMapper mapper =
        JsonMapper.builder()
            .enable(com.fasterxml.jackson.databind.DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();
    mapper
        .getFactory()
        .setStreamReadConstraints(StreamReadConstraints.builder().maxNestingDepth(DEEPEST).build());
    return mapper;
  }

  /** Reads a JSON text; empty if it is none. */
  public static Optional<JsonMessage> parse(String text) {
    try {
      JsonNode root = MAPPER.readTree(text);
      return root == null || root.isMissingNode()
          ? Optional.empty()
          : Optional.of(new JsonMessage(root));
    } catch (JsonProcessingException notJson) {
      return Optional.empty();
    }
  }

  /** Whether the outermost value is an object. */
  public boolean isObject() {
    return root.isObject();
  }

  @Override
  public Optional<String> field(String name) {
    JsonNode node = name.startsWith("/") ? root.at(pointer(name)) : root.path(name);
    return node.isValueNode() ? Optional.of(node.asText()) : Optional.empty();
  }

  @Override
  public List<String> names() {
    List<String> names = new ArrayList<>();
    collect(root, "", names);
    return names;
  }

  private static void collect(JsonNode node, String pointer, List<String> names) {
    if (names.size() >= MOST_NAMES) {
      return;
    }
    if (node.isValueNode()) {
      names.add(pointer);
    }
    node.properties()
        .forEach(
            child -> collect(child.getValue(), pointer + "/" + escaped(child.getKey()), names));
    if (node.isArray()) {
      for (int i = 0; i < node.size(); i++) {
        collect(node.get(i), pointer + "/" + i, names);
      }
    }
  }

  /** RFC 6901, section 3. */
  private static String escaped(String key) {
    return key.replace("~", "~0").replace("/", "~1");
  }

  private static JsonPointer pointer(String name) {
    return POINTERS.computeIfAbsent(name, JsonPointer::compile);
  }
}
