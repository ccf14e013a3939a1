package heatwake.dashboard.command;

import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;

/** Says in one line what is wrong with a command line, in words that need no knowledge of Java. */
final class MisuseWords {
  private MisuseWords() {}

  static String of(ParameterException fault) {
    if (fault instanceof UnmatchedArgumentException unmatched) {
      return unmatched(unmatched);
    }
    ArgSpec argument = fault.getArgSpec();
    if (argument == null || fault.getValue() == null) {
      return fault.getMessage();
    }
    String written = name(argument) + " \"" + fault.getValue() + "\"";
    if (fault.getCause() instanceof TypeConversionException wanted) {
      return argument.arity().max() == 0
          ? name(argument) + " takes no value; leave \"=" + fault.getValue() + "\" away"
          : written + ": " + wanted.getMessage();
    }
    return fault.getMessage();
  }

  private static String unmatched(UnmatchedArgumentException fault) {
    String word = fault.getUnmatched().get(0);
    if (word.startsWith("-")) {
      return "there is no option " + word.replaceFirst("=.*", "");
    }
    if (word.isBlank()) {
      return "a word is empty; fill it in or leave it out";
    }
    boolean commandWanted = fault.getCommandLine().getParent() == null;
    return commandWanted
        ? "there is no command " + word
        : "\"" + word + "\" is one word too many; put what belongs together in quotes";
  }

  /** As it is written: the first of an option's names, or what help calls a parameter. */
  private static String name(ArgSpec argument) {
    return argument instanceof OptionSpec option ? option.names()[0] : argument.paramLabel();
  }
}
