package heatwake.analysis.rule.measurement;

import heatwake.analysis.scenario.RunBuilder;

/** Clips that come off their pipe in a night of heating. */
final class SlippingClips {
  private SlippingClips() {}

  static RunBuilder night() {
    return RunBuilder.run().air(15).off(2).circulating(8).heating(10);
  }

  /** From 70 min on the probe lies half off its pipe. */
  static RunBuilder.Change slipsAt70Min(double airCel, double share) {
    return (atS, cel) ->
        cel + share * Math.min(1, Math.max(0, (atS - 4200) / 300)) * (airCel - cel);
  }
}
