package heatwake.collector.mqtt;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import javax.net.SocketFactory;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.SSLSocketFactory;

/**
 * The TCP connection beneath an MQTT client, plain or encrypted, that never lets a packet through
 * which is longer than we want to hold in memory.
 */
final class BrokerSocket {
  static final int PLAIN_PORT = 1883;
  static final int TLS_PORT = 8883;

  /** The MQTT clients poll for their own end this often. */
  private static final int READ_TIMEOUT_MS = 1000;

  private final URI uri;
  private final SocketFactory factory;
  private final int connectTimeoutMs;
  private final PacketLimitStream.Witness witness;
  private Socket socket;
  private InputStream input;

  /**
   * @param factory of sockets; for {@code mqtts} one that makes TLS sockets
   */
  BrokerSocket(
      URI uri, SocketFactory factory, int connectTimeoutMs, PacketLimitStream.Witness witness) {
    this.witness = witness;
    this.uri = uri;
    this.factory = factory;
    this.connectTimeoutMs = connectTimeoutMs;
  }

  static boolean isTls(URI uri) {
    return "mqtts".equals(uri.getScheme());
  }

  private int port() {
    if (uri.getPort() >= 0) {
      return uri.getPort();
    }
    return isTls(uri) ? TLS_PORT : PLAIN_PORT;
  }

  void open() throws IOException {
    Socket plain = new Socket();
    socket = plain;
    plain.setTcpNoDelay(true);
    plain.connect(new InetSocketAddress(uri.getHost(), port()), connectTimeoutMs);
    if (isTls(uri)) {
      plain.setSoTimeout(connectTimeoutMs);
      SSLSocket tls =
          (SSLSocket) ((SSLSocketFactory) factory).createSocket(plain, uri.getHost(), port(), true);
      socket = tls;
      SSLParameters parameters = tls.getSSLParameters();
      // Checks that the certificate is for this host, as a browser does.
      parameters.setEndpointIdentificationAlgorithm("HTTPS");
      tls.setSSLParameters(parameters);
      tls.startHandshake();
    }
    socket.setSoTimeout(READ_TIMEOUT_MS);
    input = new PacketLimitStream(socket.getInputStream(), witness);
  }

  InputStream input() {
    return input;
  }

  OutputStream output() throws IOException {
    return socket.getOutputStream();
  }

  void close() throws IOException {
    if (socket != null) {
      socket.close();
    }
  }
}
