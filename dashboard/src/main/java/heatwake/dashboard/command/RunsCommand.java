package heatwake.dashboard.command;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import heatwake.collector.store.RunSummary;
import heatwake.collector.store.Store;
import java.io.PrintWriter;
import java.time.Instant;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Lists the runs. */
@Command(name = "runs", description = "Lists the runs.")
final class RunsCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;
  @Mixin private StoreOption database;

  @Option(names = "--json", description = "As a JSON array.")
  private boolean json;

  @Override
  public Integer call() throws JsonProcessingException {
    try (Store store = Store.openExisting(database.file())) {
      PrintWriter out = spec.commandLine().getOut();
      if (json) {
        out.println(asJson(store.runs()));
      } else {
        print(store.runs(), out);
        if (store.runs().isEmpty()) {
          spec.commandLine()
              .getErr()
              .println("no run yet; record one with heatwake record or import one");
        }
      }
    }
    return Main.DONE;
  }

  private static String asJson(List<RunSummary> runs) throws JsonProcessingException {
    ObjectMapper mapper = new ObjectMapper();
    ArrayNode array = mapper.createArrayNode();
    for (RunSummary run : runs) {
      ObjectNode object = array.addObject();
      object.put("id", run.id());
      object.put("site", run.site());
      object.put("shown", run.shown());
      object.put("start", Instant.ofEpochMilli(run.startMs()).toString());
      if (run.endMs().isPresent()) {
        object.put("end", Instant.ofEpochMilli(run.endMs().getAsLong()).toString());
      } else {
        object.putNull("end");
      }
      object.put("readings", run.readings());
    }
    return mapper.writerWithDefaultPrettyPrinter().writeValueAsString(array);
  }

  private static void print(List<RunSummary> runs, PrintWriter out) {
    out.printf("%5s  %-24s  %-24s  %10s  %s%n", "run", "start", "end", "readings", "site");
    for (RunSummary run : runs) {
      out.printf(
          "%5d  %-24s  %-24s  %10d  %s%n",
          run.id(),
          Instant.ofEpochMilli(run.startMs()),
          run.endMs().isPresent()
              ? Instant.ofEpochMilli(run.endMs().getAsLong()).toString()
              : "not ended",
          run.readings(),
          run.shown());
    }
  }
}
