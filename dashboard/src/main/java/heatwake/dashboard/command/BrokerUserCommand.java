package heatwake.dashboard.command;

import heatwake.collector.broker.PasswordHash;
import heatwake.collector.mistake.MistakeException;
import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Makes a line for the file of the embedded broker's users. */
@Command(
    name = "broker-user",
    description = {
      "Prints a line for the file that record --broker-users takes: the name and a hash of the"
          + " password.",
      "The password is asked for, or read from the first line of standard input."
    })
final class BrokerUserCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "NAME", description = "User name of a probe.")
  private String name;

  @Override
  public Integer call() throws IOException {
    if (name.isBlank() || name.contains(":") || name.startsWith("#")) {
      throw new MistakeException(
          "\"" + name + "\": a user name has letters, but no colon and no # in front");
    }
    String password = password();
    if (password == null || password.isEmpty()) {
      throw new MistakeException("no password given; type one, or send it to standard input");
    }
    spec.commandLine().getOut().println(name + ":" + PasswordHash.of(password));
    return Main.DONE;
  }

  // Newer Javas give a console that reads redirected input too, which is as good.
  @SuppressWarnings("SystemConsoleNull")
  private static String password() throws IOException {
    Console console = System.console();
    if (console != null) {
      char[] typed = console.readPassword("Password: ");
      return typed == null ? null : new String(typed);
    }
    return new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8)).readLine();
  }
}
