package heatwake.collector.mqtt;

import heatwake.collector.frame.Payload;
import heatwake.collector.probe.ProbeTap;
import heatwake.collector.rig.ProbeSpec;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.paho.client.mqttv3.MqttTopic;

/** Which probes a topic feeds. */
final class TopicTaps {
  /** Topics remembered; a wildcard can match any number. */
  private static final int REMEMBERED = 1000;

  private record Subscription(String filter, ProbeTap tap) {}

  private final List<Subscription> subscriptions = new ArrayList<>();
  private final Map<String, List<ProbeTap>> found =
      new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, List<ProbeTap>> eldest) {
          return size() > REMEMBERED;
        }
      };

  TopicTaps(List<ProbeSpec> probes) {
    for (ProbeSpec probe : probes) {
      if (probe.address() instanceof ProbeSpec.Address.Topic topic) {
        subscriptions.add(
            new Subscription(
                topic.filter(), ProbeTap.of(probe, topic.pointer().orElse(Payload.WHOLE))));
      }
    }
  }

  /** The topic filters to subscribe to, each once. */
  List<String> filters() {
    return subscriptions.stream().map(Subscription::filter).distinct().toList();
  }

  /** The probes whose filter matches a topic. */
  List<ProbeTap> of(String topic) {
    synchronized (found) {
      return found.computeIfAbsent(topic, this::matching);
    }
  }

  private List<ProbeTap> matching(String topic) {
    return subscriptions.stream()
        .filter(one -> MqttTopic.isMatched(one.filter(), topic))
        .map(Subscription::tap)
        .toList();
  }
}
