package heatwake.analysis.coverage;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.series.Recording;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Says which uncertainties had to be assumed because the rig states none. */
public final class Assumed {
  private Assumed() {}

  /** One sentence for each quantity of which a recorded probe has no stated uncertainty. */
  public static List<String> uncertainties(Recording recording) {
    Map<Quantity, List<String>> unstated = new EnumMap<>(Quantity.class);
    for (Channel channel : recording.series().keySet()) {
      if (channel.quantity() != Quantity.STATE
          && !ProbeUncertainty.of(recording.rig(), channel).stated()) {
        unstated.computeIfAbsent(channel.quantity(), any -> new ArrayList<>()).add(channel.id());
      }
    }
    List<String> sentences = new ArrayList<>();
    unstated.forEach(
        (quantity, channels) ->
            sentences.add(
                "uncertainty of "
                    + String.join(", ", channels)
                    + ": not stated in the rig, "
                    + inWords(quantity)
                    + " is assumed; add it to the [[probe]]"));
    return sentences;
  }

  private static String inWords(Quantity quantity) {
    ProbeUncertainty taken = ProbeUncertainty.unstated(quantity);
    String share = String.format(Locale.ROOT, "%.0f %%", taken.share() * 100);
    return switch (quantity) {
      case TEMPERATURE -> String.format(Locale.ROOT, "%.2f K", taken.absolute());
      case RATIO -> String.format(Locale.ROOT, "%.0f %% of humidity", taken.absolute() * 100);
      case PRESSURE -> String.format(Locale.ROOT, "%.0f kPa and %s", taken.absolute() / 1e3, share);
      case SPEED -> String.format(Locale.ROOT, "%.1f m/s and %s", taken.absolute(), share);
      default -> share;
    };
  }
}
