package heatwake.analysis.coverage;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.StampsLeftOut;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** Says which readings take no part in a run, because their stamps lie far outside it. */
public final class WrongStamps {
  private WrongStamps() {}

  /** One sentence for each channel that has such readings. */
  public static List<String> of(Recording recording) {
    Map<Channel, StampsLeftOut> byChannel = new EnumMap<>(Channel.class);
    for (StampsLeftOut one : recording.leftOut()) {
      byChannel.merge(
          one.channel(),
          one,
          (first, more) ->
              new StampsLeftOut(
                  first.channel(), first.readings() + more.readings(), first.exampleMs()));
    }
    return byChannel.values().stream().map(WrongStamps::told).toList();
  }

  private static String told(StampsLeftOut one) {
    return String.format(
        one.readings() == 1
            ? "%s: %d reading left out, stamped far outside the run (%s); set the probe's clock"
            : "%s: %d readings left out, stamped far outside the run (such as %s); set the probe's"
                + " clock",
        one.channel().id(),
        one.readings(),
        Wording.moment(one.exampleMs()));
  }
}
