package heatwake.dashboard.command;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** A systemd unit that records the way this command line says. */
final class SystemdUnit {
  private SystemdUnit() {}

  /**
   * The unit's text.
   *
   * @param site what is recorded
   * @param arguments the words after {@code heatwake}, with absolute paths
   */
  static String text(String site, List<String> arguments) {
    List<String> command = new ArrayList<>(launcher());
    command.addAll(arguments);
    return """
        # Save as /etc/systemd/system/heatwake.service, then: systemctl enable --now heatwake
        # It runs under the account named below, which needs the group dialout for serial ports.
        [Unit]
        Description=Heatwake recorder, %s
        Wants=network-online.target time-sync.target
        After=network-online.target time-sync.target
        StartLimitIntervalSec=0

        [Service]
        # Ready once every source is open or being retried; a network that does not answer takes its time.
        Type=notify
        TimeoutStartSec=infinity
        User=%s
        SupplementaryGroups=dialout
        # Passwords that the rig names, as NAME=value lines, readable by root only:
        EnvironmentFile=-/etc/heatwake/environment
        ExecStart=%s
        Restart=always
        RestartSec=5
        # A mistake in rig or command line is not mended by trying again.
        RestartPreventExitStatus=2
        # The recorder beats through systemd-notify while its writer works.
        WatchdogSec=180
        NotifyAccess=all
        TimeoutStopSec=90
        NoNewPrivileges=yes
        PrivateTmp=yes
        ProtectSystem=full

        [Install]
        WantedBy=multi-user.target
        """
        .formatted(
            oneLine(site),
            oneLine(System.getProperty("user.name")),
            command.stream().map(SystemdUnit::quoted).collect(Collectors.joining(" ")));
  }

  /** The launcher beside the sources, else Java on this very jar. */
  private static List<String> launcher() {
    try {
      Path jar =
          Path.of(SystemdUnit.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      Path launcher = jar.resolve("../../../heatwake").normalize();
      return Files.isExecutable(launcher)
          ? List.of(launcher.toString())
          : List.of(
              Path.of(System.getProperty("java.home"), "bin", "java").toString(),
              "-jar",
              jar.toString());
    } catch (URISyntaxException e) {
      throw new IllegalStateException(e);
    }
  }

  private static String oneLine(String text) {
    return text.replaceAll("\\p{Cntrl}", " ").replace("%", "%%");
  }

  /** As systemd.service(5) reads words: quoted, with % and $ doubled. */
  private static String quoted(String word) {
    String escaped = word.replace("\\", "\\\\").replace("%", "%%").replace("$", "$$");
    return escaped.matches("[\\w@%+=:,./$-]+")
        ? escaped
        : "\"" + escaped.replace("\"", "\\\"") + "\"";
  }
}
