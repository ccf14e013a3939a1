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

  /** How long a broker may take to let us in. */
  static final int CONNECT_TIMEOUT_S = 10;

  /** How long it may take to answer anything else. */
  static final long ANSWER_TIMEOUT_MS = 15_000;

  /** How often it hears from us when there is nothing to say. */
  static final int KEEP_ALIVE_S = 30;

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

  /** What the broker keeps for us, told from what other brokers do; ends with the client id. */
  String session() {
    return uri + " " + clientId;
  }

  /** What a person calls this broker. */
  String shown() {
    return uri.toString();
  }

  /** Nobody answers at its address, or the connection broke. */
  BrokerException unreachable(Throwable fault) {
    return BrokerException.unreachable(shown() + ": " + LinkFault.words(fault));
  }

  /** It does not take our user and password. */
  BrokerException notAuthorised() {
    return refused("not authorised; check user and password");
  }

  /** It does not take the name of our session. */
  BrokerException identifierRefused() {
    return refused("client identifier not accepted");
  }

  /** It does not let us in, or not all the way. */
  BrokerException refused(String reason) {
    return BrokerException.refused(
        shown()
            + " refused "
            + credentials
                .map(known -> "user \"" + known.user() + "\"")
                .orElse("a client without user")
            + ": "
            + reason);
  }
}
