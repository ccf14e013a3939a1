package heatwake.dashboard.command;

import heatwake.dashboard.present.UnitChoice;
import java.util.Arrays;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** The option that chooses the units a person reads in. Files and JSON keep theirs. */
final class UnitOption {
  @Option(
      names = "--units",
      paramLabel = "metric|us",
      defaultValue = "metric",
      converter = Choice.class,
      description = "Units to show: metric or us (°F, gal/min, psi); default metric.")
  private UnitChoice choice;

  /** Reads the choice. */
  static final class Choice implements ITypeConverter<UnitChoice> {
    @Override
    public UnitChoice convert(String word) {
      return Arrays.stream(UnitChoice.values())
          .filter(one -> one.name().equalsIgnoreCase(word))
          .findFirst()
          .orElseThrow(() -> new TypeConversionException("write metric or us"));
    }
  }

  UnitChoice choice() {
    return choice;
  }
}
