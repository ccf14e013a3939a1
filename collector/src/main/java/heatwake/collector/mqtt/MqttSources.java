package heatwake.collector.mqtt;

import heatwake.collector.mistake.MistakeException;
import heatwake.collector.mistake.SettingException;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.rig.ProbeSpec;
import heatwake.collector.rig.SourceSpec;
import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.eclipse.paho.client.mqttv3.MqttTopic;

/** Makes MQTT sources of what the rig states. */
public final class MqttSources {
  private MqttSources() {}

  /**
   * A source, not yet started.
   *
   * @param site name of the site; with the source's name it makes the name of our session at the
   *     broker
   * @param environment looks up environment variables
   * @throws MistakeException if the address, a topic, the authority's file or the password's
   *     variable will not do
   */
  public static ProbeSource of(
      SourceSpec.Mqtt source,
      List<ProbeSpec> probes,
      String site,
      UnaryOperator<String> environment) {
    probes.forEach(MqttSources::checkTopic);
    BrokerAccess access = access(source, session(source, site), environment);
    ProtocolClient.Maker version = source.version() == 5 ? Mqtt5Client::new : Mqtt311Client::new;
    return new MqttSource(
        source.name(),
        access.session(),
        probes,
        listener -> new MqttLink(access, version, listener));
  }

  /**
   * A topic to keep our latest word on, at the broker of a source.
   *
   * @param lastWill what the broker is to say for us when we vanish
   * @throws MistakeException if the address, the topic, the authority's file or the password's
   *     variable will not do
   */
  public static RetainedTopic retained(
      SourceSpec.Mqtt source,
      String site,
      String topic,
      String lastWill,
      UnaryOperator<String> environment) {
    try {
      MqttTopic.validate(topic, false);
    } catch (IllegalArgumentException bad) {
      throw new MistakeException(
          "\"" + topic + "\" is not an MQTT topic to publish on; it has no + and no #", bad);
    }
    return new RetainedTopic(
        access(source, clientId(site, source, topic), environment), topic, lastWill);
  }

  /**
   * The name of a source's session at its broker.
   *
   * @param site name of the site
   */
  public static String session(SourceSpec.Mqtt source, String site) {
    return clientId(site, source, "");
  }

  /**
   * The client id under which a source has its session at a broker.
   *
   * @param session as in the marks of its messages
   */
  public static String client(String session) {
    return session.substring(session.lastIndexOf(' ') + 1);
  }

  private static BrokerAccess access(
      SourceSpec.Mqtt source, String clientId, UnaryOperator<String> environment) {
    URI uri = uri(source);
    return new BrokerAccess(
        uri,
        clientId,
        credentials(source, environment),
        BrokerSocket.isTls(uri)
            ? Optional.of(TrustedAuthority.sockets(source.ca().map(Path::of)))
            : Optional.empty());
  }

  private static URI uri(SourceSpec.Mqtt source) {
    try {
      URI uri = new URI(source.url());
      boolean known = "mqtt".equals(uri.getScheme()) || "mqtts".equals(uri.getScheme());
      if (known && uri.getHost() != null && uri.getUserInfo() == null) {
        return uri;
      }
    } catch (URISyntaxException bad) {
      // Told below, with the mend.
    }
    throw new MistakeException(
        "source \""
            + source.name()
            + "\": \""
            + source.url()
            + "\" is not a broker's address; write it like mqtt://127.0.0.1:1883 or"
            + " mqtts://broker.example:8883, user and password apart");
  }

  private static void checkTopic(ProbeSpec probe) {
    if (probe.address() instanceof ProbeSpec.Address.Topic topic) {
      try {
        MqttTopic.validate(topic.filter(), true);
      } catch (IllegalArgumentException bad) {
        throw new MistakeException(
            "probe "
                + probe.channel().id()
                + ": \""
                + topic.filter()
                + "\" is not an MQTT topic; + stands for one level, # for all the rest at the end",
            bad);
      }
    }
  }

  private static Optional<BrokerAccess.Credentials> credentials(
      SourceSpec.Mqtt source, UnaryOperator<String> environment) {
    if (source.user().isEmpty()) {
      return Optional.empty();
    }
    String password = "";
    if (source.passwordEnv().isPresent()) {
      String variable = source.passwordEnv().get();
      password = environment.apply(variable);
      if (password == null) {
        throw new SettingException(
            "password-env",
            "source \""
                + source.name()
                + "\": the environment variable "
                + variable
                + " is not set; put the broker's password into it",
            null);
      }
    }
    return Optional.of(new BrokerAccess.Credentials(source.user().get(), password));
  }

  /**
   * The name of our session at the broker: the same at every start of the same source on the same
   * machine, at most 23 characters (MQTT 3.1.1, 3.1.3-5).
   */
  private static String clientId(String site, SourceSpec.Mqtt source, String use) {
    String seed = String.join("\n", host(), site, source.name(), source.url()) + use;
    try {
      byte[] digest =
          MessageDigest.getInstance("SHA-256").digest(seed.getBytes(StandardCharsets.UTF_8));
      return "heatwake" + HexFormat.of().formatHex(digest, 0, 7);
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("every Java has SHA-256", impossible);
    }
  }

  private static String host() {
    try {
      return InetAddress.getLocalHost().getHostName();
    } catch (UnknownHostException nameless) {
      return "nameless";
    }
  }
}
