package heatwake.dashboard.command;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads the number of a run from the command line. */
final class RunNumber implements ITypeConverter<Long> {
  @Override
  public Long convert(String word) {
    if (word.matches("[0-9]{1,18}")) {
      return Long.valueOf(word);
    }
    throw new TypeConversionException(
        "a run has a whole number, such as 1; \"heatwake runs\" lists them");
  }
}
