package heatwake.dashboard.command;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Takes a word as it is, unless a script has left it empty. */
final class FilledIn implements ITypeConverter<String> {
  @Override
  public String convert(String word) {
    if (word.isBlank()) {
      throw new TypeConversionException("is empty; fill it in or leave it out");
    }
    return word;
  }
}
