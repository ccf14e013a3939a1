package heatwake.collector.peer;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A Mosquitto broker and its publishing client. Keeps sessions on disk over restarts. */
public final class Mosquitto implements AutoCloseable {
  private final Path folder;
  private final int port;
  private final Path settings;
  private RealProgram broker;

  private Mosquitto(Path folder, int port, Path settings) {
    this.folder = folder;
    this.port = port;
    this.settings = settings;
  }

  /** Starts one on a free port, on loopback, open to all. */
  public static Mosquitto open(Path folder) throws Exception {
    return with(folder, "allow_anonymous true");
  }

  /** Starts one with further lines of settings. */
  public static Mosquitto with(Path folder, String... lines) throws Exception {
    int port = freePort();
    List<String> settings = new ArrayList<>();
    settings.add("listener " + port + " 127.0.0.1");
    settings.add("persistence true");
    settings.add("persistence_location " + folder + "/");
    settings.add("autosave_on_changes true");
    settings.add("autosave_interval 1");
    settings.add("max_queued_messages 0");
    settings.add("user " + System.getProperty("user.name"));
    settings.addAll(List.of(lines));
    Path file = Files.createTempFile(folder, "mosquitto", ".conf");
    Files.write(file, settings);
    Mosquitto mosquitto = new Mosquitto(folder, port, file);
    mosquitto.start();
    return mosquitto;
  }

  /** A port nobody listens on. */
  public static int freePort() throws IOException {
    try (ServerSocket socket = new ServerSocket(0)) {
      return socket.getLocalPort();
    }
  }

  /** Starts it again on its port, with what it kept. */
  public void start() throws Exception {
    broker = RealProgram.start(folder, "mosquitto", "-v", "-c", settings.toString());
    Eventually.that(
        "mosquitto listens",
        () -> {
          if (!broker.isRunning()) {
            throw new IllegalStateException(broker.output());
          }
          try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), port)) {
            return socket.isConnected();
          } catch (IOException notYet) {
            return false;
          }
        });
  }

  /** Kills it as a power cut would. */
  public void kill() throws InterruptedException {
    broker.kill();
  }

  public int port() {
    return port;
  }

  public String url() {
    return "mqtt://127.0.0.1:" + port;
  }

  /** What it logged since it was last started. */
  public String log() throws IOException {
    return broker.output();
  }

  /** Publishes each line as one message at quality of service 1, in one connection. */
  public void publish(String topic, List<String> payloads, String... options) throws Exception {
    publishTo(folder, port, topic, payloads, options);
  }

  /** Publishes bytes as one message. */
  public void publishFile(String topic, byte[] payload) throws Exception {
    Path file = Files.write(Files.createTempFile(folder, "payload", ".bin"), payload);
    RealProgram.run(
        folder,
        "mosquitto_pub",
        "-h",
        "127.0.0.1",
        "-p",
        Integer.toString(port),
        "-q",
        "1",
        "-t",
        topic,
        "-f",
        file.toString());
  }

  /** Publishes to any broker with Mosquitto's client. */
  public static void publishTo(
      Path folder, int port, String topic, List<String> payloads, String... options)
      throws Exception {
    List<String> arguments =
        new ArrayList<>(
            List.of("-h", "127.0.0.1", "-p", Integer.toString(port), "-q", "1", "-t", topic, "-l"));
    arguments.addAll(List.of(options));
    RealProgram.run(
        folder,
        (String.join("\n", payloads) + "\n").getBytes(java.nio.charset.StandardCharsets.UTF_8),
        "mosquitto_pub",
        arguments.toArray(new String[0]));
  }

  @Override
  public void close() {
    broker.close();
  }
}
