package heatwake.collector.mqtt;

import java.net.URI;
import java.util.Optional;
import javax.net.ssl.SSLSocketFactory;

/**
 * How to get into a broker.
 *
 * @param uri {@code mqtt://host:port} or {@code mqtts://host:port}
 * @param clientId name of the session that the broker keeps for us
 * @param tls how to trust the broker, where the connection is to be encrypted
 */
record BrokerAccess(
    URI uri, String clientId, Optional<Credentials> credentials, Optional<SSLSocketFactory> tls) {

  /** A user and the password, which never shows in text. */
  static final class Credentials {
    private final String user;
    private final String password;

    Credentials(String user, String password) {
      this.user = user;
      this.password = password;
    }

    String user() {
      return user;
    }

    String password() {
      return password;
    }

    @Override
    public String toString() {
      return user;
    }
  }

  /** What a person calls this broker. */
  String shown() {
    return uri.toString();
  }

  /** The sentence for a broker that does not let us in. */
  String refusal(String reason) {
    return shown()
        + " refused "
        + credentials.map(known -> "user \"" + known.user() + "\"").orElse("a client without user")
        + ": "
        + reason;
  }
}
