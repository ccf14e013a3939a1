package heatwake.dashboard.command;

import heatwake.dashboard.present.UnitChoice;
import picocli.CommandLine.Option;

/** The option that chooses the units a person reads in. Files and JSON keep theirs. */
final class UnitOption {
  @Option(
      names = "--units",
      paramLabel = "metric|us",
      defaultValue = "metric",
      description = "Units to show: metric or us (°F, gal/min, psi); default metric.")
  private UnitChoice choice;

  UnitChoice choice() {
    return choice;
  }
}
