package heatwake.dashboard.command;

import java.nio.file.Path;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.ScopeType;
import picocli.CommandLine.Spec;

/** Entry point of every command. */
@Command(
    name = "heatwake",
    description = "Watches a swimming-pool heat-pump heater: probes in, evidence out.",
    mixinStandardHelpOptions = true,
    scope = ScopeType.INHERIT,
    version = "heatwake 0.1.0",
    subcommands = {
      DemoCommand.class,
      PortsCommand.class,
      RecordCommand.class,
      BrokerUserCommand.class,
      ImportCommand.class,
      ExportCommand.class,
      RunsCommand.class,
      AnalyseCommand.class,
      ReportCommand.class,
      CompareCommand.class,
      NoteCommand.class,
      WindowCommand.class,
    })
public final class Main implements Runnable {
  /** Exit status: done. */
  static final int DONE = 0;

  /** Exit status: a fault of the program or machine. */
  static final int FAULT = 1;

  /** Exit status: the caller's mistake. */
  static final int MISTAKE = 2;

  @Spec private CommandSpec spec;

  private Main() {}

  public static void main(String[] arguments) {
    System.exit(run(arguments));
  }

  /** Runs one command and returns its exit status. */
  static int run(String... arguments) {
    return commandLine().execute(arguments);
  }

  /** The command line, with its ways of telling mistakes and faults. */
  static CommandLine commandLine() {
    return new CommandLine(new Main())
        .registerConverter(Path.class, new FileName())
        .setParameterExceptionHandler(Main::sayMisuse)
        .setExecutionExceptionHandler(Main::sayFault);
  }

  private static int sayMisuse(ParameterException fault, String[] arguments) {
    CommandLine command = fault.getCommandLine();
    command
        .getErr()
        .println(
            "heatwake: "
                + FaultWords.oneLine(MisuseWords.of(fault))
                + "; see "
                + command.getCommandSpec().qualifiedName()
                + " --help");
    return MISTAKE;
  }

  private static int sayFault(
      Exception fault, CommandLine command, CommandLine.ParseResult parsed) {
    command.getErr().println("heatwake: " + FaultWords.of(fault));
    return FaultWords.status(fault);
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "say what to do");
  }
}
