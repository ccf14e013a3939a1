package heatwake.collector.source;

import heatwake.collector.mqtt.MqttSources;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.SourceSpec;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;

/**
 * Two sources in one session at a broker would push each other out, and each would be handed
 * messages meant for the other.
 */
final class SessionsApart {
  private SessionsApart() {}

  /**
   * The names of all sessions, no two alike.
   *
   * @throws heatwake.collector.mistake.MistakeException naming both sources that have one session
   */
  static Set<String> all(Collection<RigFile> rigs) {
    Map<String, RigFile> users = new HashMap<>();
    for (RigFile rig : rigs) {
      String site = rig.rig().site().name();
      for (SourceSpec source : rig.sources()) {
        if (source instanceof SourceSpec.Mqtt mqtt) {
          RigFile other = users.putIfAbsent(MqttSources.session(mqtt, site), rig);
          if (other != null) {
            throw rig.mistake(
                source,
                "name",
                "source \""
                    + source.name()
                    + "\" of site \""
                    + site
                    + "\" is also in "
                    + other.name()
                    + ", at the same broker; the two would push each other out: give one another"
                    + " name");
          }
        }
      }
    }
    return Set.copyOf(users.keySet());
  }
}
