package heatwake.collector.unattended;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import heatwake.analysis.finding.Flag;
import heatwake.collector.broker.RefusedClient;
import heatwake.collector.recorder.RecordedRun;
import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.SourceState;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.LongFunction;

/** The state of a recorder as JSON. */
final class StatusText {
  private static final ObjectMapper MAPPER = new ObjectMapper();

  private StatusText() {}

  /**
   * The state now.
   *
   * @param refused who was not let into the broker inside, if there is one
   * @param freeBytes space left on the disk
   * @param flags those raised in a run
   */
  static String of(
      Recorder recorder,
      Optional<List<RefusedClient>> refused,
      long freeBytes,
      LongFunction<List<Flag>> flags,
      long nowMs) {
    ObjectNode status = MAPPER.createObjectNode();
    status.put("state", recorder.blocked().isPresent() ? "blocked" : "recording");
    status.put("time", iso(nowMs));
    status.put("database", recorder.database().toString());
    recorder.blocked().ifPresent(reason -> status.put("blocked", reason));
    status.put("readings_waiting", recorder.waiting());
    status.put("disk_free_bytes", freeBytes);
    refused.ifPresent(clients -> tell(clients, status.putObject("broker").putArray("refused")));
    ArrayNode runs = status.putArray("runs");
    for (RecordedRun run : recorder.runs()) {
      ObjectNode one = runs.addObject();
      one.put("run", run.id());
      one.put("site", run.rig().rig().site().name());
      one.put("rig", run.rig().name());
      one.put("began", iso(run.beganMs()));
      one.put("readings", run.stored());
      ObjectNode latest = one.putObject("latest");
      run.latest()
          .forEach(
              (channel, reading) -> {
                ObjectNode value = latest.putObject(channel.id());
                value.put("value", reading.value());
                value.put("unit", channel.storedUnit().code());
                value.put("time", iso(reading.timeMs()));
              });
      ArrayNode silent = one.putArray("silent");
      run.silent().stream().sorted().forEach(channel -> silent.add(channel.id()));
      ArrayNode sources = one.putArray("sources");
      for (SourceState source : run.sources()) {
        ObjectNode object = sources.addObject();
        object.put("name", source.name());
        object.put("state", source.lostBecause().isPresent() ? "lost" : "ok");
        object.put("since", iso(source.sinceMs()));
        source.lostBecause().ifPresent(why -> object.put("why", why));
      }
      ArrayNode raised = one.putArray("flags");
      for (Flag flag : flags.apply(run.id())) {
        ObjectNode object = raised.addObject();
        object.put("rule", flag.rule());
        object.put("severity", flag.severity().id());
        object.put("start", iso(flag.startMs()));
        object.put("end", iso(flag.endMs()));
        object.put("evidence", flag.evidence());
      }
    }
    try {
      return MAPPER.writeValueAsString(status);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private static void tell(List<RefusedClient> clients, ArrayNode refused) {
    for (RefusedClient client : clients) {
      ObjectNode object = refused.addObject();
      object.put("client", client.client());
      object.put("reason", client.reason());
      object.put("count", client.count());
      object.put("first", iso(client.firstMs()));
      object.put("last", iso(client.lastMs()));
    }
  }

  private static String iso(long timeMs) {
    return Instant.ofEpochMilli(timeMs).toString();
  }
}
