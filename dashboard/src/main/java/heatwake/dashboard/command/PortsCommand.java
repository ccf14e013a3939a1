package heatwake.dashboard.command;

import heatwake.collector.frame.Excerpt;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.serial.PortException;
import heatwake.collector.serial.PortFinder;
import heatwake.collector.serial.PortInfo;
import heatwake.collector.serial.PortSurvey;
import heatwake.collector.serial.PortSurvey.Heard;
import java.io.PrintWriter;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Lists serial ports and what they say. */
@Command(
    name = "ports",
    description = {
      "Lists serial ports. With --listen, listens to each and prints the beginning of a rig file"
          + " for it."
    })
final class PortsCommand implements Callable<Integer> {
  private static final int LINES_SHOWN = 3;

  /** How long to listen. */
  static final class Seconds extends WholeNumber {
    Seconds() {
      super(1, 3600, "write a whole number from 1 to 3600");
    }
  }

  @Spec private CommandSpec spec;

  @Option(
      names = "--listen",
      description = "Listens, finds speed and line format, and prints a rig to be filled in.")
  private boolean listen;

  @Option(
      names = "--seconds",
      paramLabel = "N",
      defaultValue = "4",
      converter = Seconds.class,
      description = "How long to listen at each speed; default ${DEFAULT-VALUE}.")
  private int seconds;

  @Parameters(
      paramLabel = "PORT",
      arity = "0..*",
      description = "Ports to listen to; all that are listed unless named.")
  private List<String> named;

  @Override
  public Integer call() {
    List<PortInfo> ports = PortFinder.list();
    if (!listen) {
      if (named != null) {
        throw new MistakeException("ports takes a PORT only with --listen");
      }
      list(ports);
      return Main.DONE;
    }
    if (named != null && named.stream().anyMatch(String::isBlank)) {
      throw new MistakeException("the PORT is empty; name one, or leave it out to hear all");
    }
    List<PortInfo> chosen =
        named == null ? ports : named.stream().map(path -> port(path, ports)).toList();
    if (chosen.isEmpty()) {
      throw new MistakeException(nothing() + ", or name one: heatwake ports --listen PORT");
    }
    return listen(chosen);
  }

  private static PortInfo port(String path, List<PortInfo> ports) {
    return ports.stream()
        .filter(port -> port.path().equals(path))
        .findFirst()
        .orElseGet(() -> new PortInfo(path, "", Optional.empty()));
  }

  private static String nothing() {
    return "no serial port found; plug the adapter in";
  }

  private void list(List<PortInfo> ports) {
    if (ports.isEmpty()) {
      spec.commandLine().getErr().println(nothing());
    }
    PrintWriter out = spec.commandLine().getOut();
    for (PortInfo port : ports) {
      out.println(
          port.path() + "  " + port.description() + port.usb().map(usb -> "  " + usb).orElse(""));
    }
  }

  private int listen(List<PortInfo> ports) {
    PrintWriter out = spec.commandLine().getOut();
    int number = 1;
    int failed = 0;
    for (PortInfo port : ports) {
      spec.commandLine().getErr().println("listening to " + port.path());
      try {
        Heard heard = PortSurvey.listen(port.path(), seconds);
        if (number == 1) {
          out.println("[site]\nname = \"Name of the site\"");
        }
        out.println();
        out.println("# " + port.path() + "  " + port.description());
        tell(out, port, "port" + number++, heard);
      } catch (PortException fault) {
        failed++;
        spec.commandLine().getErr().println("heatwake: " + fault.getMessage());
      }
      out.flush();
    }
    return failed == ports.size() ? Main.FAULT : Main.DONE;
  }

  private void tell(PrintWriter out, PortInfo port, String name, Heard heard) {
    if (heard instanceof Heard.Nothing) {
      out.println("# It said nothing in " + seconds + " s. Is it powered? Does it send less often");
      out.println("# (--seconds)? A Modbus meter speaks only when asked: modbus-rtu in the rig.");
    } else if (heard instanceof Heard.Noise) {
      out.println(
          "# It sends bytes, but at no usual speed a line of readings. Crossed wires? Parity?");
    } else if (heard instanceof Heard.Readings readings) {
      readings.lines().stream()
          .limit(LINES_SHOWN)
          .forEach(line -> out.println("# it says " + Excerpt.of(line)));
      port.usb()
          .ifPresent(usb -> out.println("# serial = \"" + usb + "\" finds it under any name"));
      out.println(
          "# Fill in " + RigSkeleton.CHANNEL + " and " + RigSkeleton.UNIT + "; see docs/rig.md.");
      out.print(RigSkeleton.of(name, port.path(), readings.baud(), readings.guess()));
    }
  }
}
