package heatwake.dashboard.command;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** Reads a whole number within limits from the command line. */
abstract class WholeNumber implements ITypeConverter<Integer> {
  private final int least;
  private final int greatest;
  private final String wanted;

  /**
   * A number of some meaning.
   *
   * @param wanted what to say to who writes something else
   */
  WholeNumber(int least, int greatest, String wanted) {
    this.least = least;
    this.greatest = greatest;
    this.wanted = wanted;
  }

  @Override
  public final Integer convert(String word) {
    if (word.matches("[0-9]{1,9}")) {
      int number = Integer.parseInt(word);
      if (number >= least && number <= greatest) {
        return number;
      }
    }
    throw new TypeConversionException(wanted);
  }
}
