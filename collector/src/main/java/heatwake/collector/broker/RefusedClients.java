package heatwake.collector.broker;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Counts the clients that were not let in. The log is told once of each client and reason: a probe
 * that tries every second with an old password does not fill a disk. More than some are counted
 * together, so that whoever makes up names fills no memory.
 */
final class RefusedClients {
  private static final Logger LOG = LoggerFactory.getLogger(RefusedClients.class);
  private static final int MOST_TOLD_APART = 50;
  private static final Who OTHERS = new Who("others", "more clients than are told apart");

  private record Who(String client, String reason) {}

  private final Map<Who, RefusedClient> refused = new LinkedHashMap<>();

  synchronized void add(String client, String reason, long nowMs) {
    Who who = new Who(client, reason);
    if (!refused.containsKey(who) && refused.size() >= MOST_TOLD_APART) {
      who = OTHERS;
    }
    RefusedClient before = refused.get(who);
    if (before != null) {
      refused.put(who, before.again(nowMs));
      return;
    }
    refused.put(who, new RefusedClient(who.client(), who.reason(), 1, nowMs, nowMs));
    LOG.warn("broker: refused {}: {}; the status counts how often", who.client(), who.reason());
  }

  synchronized List<RefusedClient> all() {
    return new ArrayList<>(refused.values());
  }
}
