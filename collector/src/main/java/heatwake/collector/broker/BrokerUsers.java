package heatwake.collector.broker;

import heatwake.collector.mistake.MistakeException;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * Who may connect to the broker: a file with one {@code name:hash} a line, as {@link PasswordHash}
 * writes it. Lines that are empty or begin with # are skipped.
 */
public final class BrokerUsers {
  /** Checked against when the name is unknown, so that the answer takes as long. */
  private static final PasswordHash NOBODY = PasswordHash.of("nobody");

  private final Map<String, PasswordHash> hashes;

  private BrokerUsers(Map<String, PasswordHash> hashes) {
    this.hashes = Map.copyOf(hashes);
  }

  /**
   * Reads a file of users.
   *
   * @throws MistakeException naming file, line and mend
   */
  public static BrokerUsers read(Path file) {
    List<String> lines;
    try {
      lines = Files.readAllLines(file, StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new MistakeException(
          file + ": cannot be read; heatwake broker-user NAME makes a line of it", unreadable);
    }
    Map<String, PasswordHash> hashes = new HashMap<>();
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i).strip();
      if (line.isEmpty() || line.startsWith("#")) {
        continue;
      }
      int colon = line.indexOf(':');
      if (colon < 1) {
        throw notALine(file, i + 1);
      }
      try {
        hashes.put(line.substring(0, colon), PasswordHash.parse(line.substring(colon + 1)));
      } catch (IllegalArgumentException bad) {
        throw notALine(file, i + 1);
      }
    }
    if (hashes.isEmpty()) {
      throw new MistakeException(
          file + ": names nobody; heatwake broker-user NAME makes a line of it");
    }
    return new BrokerUsers(hashes);
  }

  private static MistakeException notALine(Path file, int line) {
    return MistakeException.at(
        file.toString(),
        line,
        "not a user and a hashed password; heatwake broker-user NAME makes such a line");
  }

  /** Whether this name goes with this password. */
  boolean admit(String name, byte[] password) {
    PasswordHash hash = hashes.getOrDefault(name, NOBODY);
    String given = password == null ? "" : new String(password, StandardCharsets.UTF_8);
    return hash.matches(given) && hash != NOBODY;
  }

  /** Whether the file names this user. */
  boolean knows(String name) {
    return hashes.containsKey(name);
  }
}
