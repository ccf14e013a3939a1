package heatwake.dashboard.present;

import heatwake.analysis.finding.BypassFigures;
import heatwake.analysis.uncertainty.Doubt;
import heatwake.analysis.uncertainty.Estimate;
import java.util.OptionalDouble;

/**
 * Sets the bypass by the flow through the heater, where meters tell it. The rise is no news of the
 * bypass then: rise times flow is the heat, so beside a flow within the nameplate's range a small
 * rise is little heat, of a weak heater or one at part load, and less water would harm it.
 */
final class BypassByFlow {
  /**
   * Where the expanded uncertainty is more than this share of the range, an end is near wherever
   * the flow stands; ours.
   */
  private static final double TOO_UNCERTAIN = 0.25;

  private static final String LESS_WATER =
      "Too much water through the heater: more than the nameplate allows. Turn the bypass a little"
          + " past the heater.";
  private static final String MORE_WATER =
      "Too little water through the heater: less than the nameplate asks for. Turn the bypass a"
          + " little towards the heater; look at strainer and filter.";
  private static final String WITHIN =
      "Flow within the nameplate's range: leave the bypass as it is.";
  private static final String LITTLE_HEAT =
      " The rise is small because the heat is low: part load, or a fault. Look at the heat first.";
  private static final String NEAR_LEAST =
      "Flow near the nameplate's least, nearer than its uncertainty can tell. A little more water"
          + " through the heater is on the safe side.";
  private static final String NEAR_GREATEST =
      "Flow near the nameplate's greatest, nearer than its uncertainty can tell. The bypass may stay"
          + " as it is.";

  private BypassByFlow() {}

  /** What to do; the flow has to be known, and one end of the range at least. */
  static Counsel of(BypassFigures figures, DisplayUnit unit) {
    Estimate flow = figures.flowM3PerS().orElseThrow();
    OptionalDouble least = figures.flowMinM3PerS();
    OptionalDouble greatest = figures.flowMaxM3PerS();
    // As surely as low-heater-flow and the start-up list, which must not contradict.
    if (least.isPresent() && Doubt.below(flow, least.getAsDouble())) {
      return new Counsel(MORE_WATER, Tone.WARNING);
    }
    if (greatest.isPresent() && Doubt.above(flow, greatest.getAsDouble())) {
      return new Counsel(LESS_WATER, Tone.WARNING);
    }
    boolean nearLeast = least.isPresent() && flow.value() - flow.expanded() < least.getAsDouble();
    boolean nearGreatest =
        greatest.isPresent() && flow.value() + flow.expanded() > greatest.getAsDouble();
    if (!nearLeast && !nearGreatest) {
      return new Counsel(WITHIN + (isRiseSmall(figures) ? LITTLE_HEAT : ""), Tone.GOOD);
    }
    if (flow.expanded() > TOO_UNCERTAIN * width(least, greatest)) {
      return new Counsel(tooUncertain(flow, unit), Tone.PLAIN);
    }
    return new Counsel(nearLeast ? NEAR_LEAST : NEAR_GREATEST, Tone.PLAIN);
  }

  private static double width(OptionalDouble least, OptionalDouble greatest) {
    return greatest.isPresent() ? greatest.getAsDouble() - least.orElse(0) : least.getAsDouble();
  }

  /** Below what the expected heat makes of the greatest flow, beyond the uncertainty (k = 2). */
  private static boolean isRiseSmall(BypassFigures figures) {
    return figures.riseK().isPresent()
        && figures
            .riseAtFlowMaxK()
            .map(at -> at.minus(figures.riseK().get()))
            .filter(below -> below.value() > below.expanded())
            .isPresent();
  }

  private static String tooUncertain(Estimate flow, DisplayUnit unit) {
    return "The flow through the heater is too uncertain ("
        + Figure.uncertainty(flow, unit.unit())
        + ") to set the bypass by: leave it as it is. Zero the probes (let the water circulate for"
        + " 10 min with the compressor at rest), or clip a better flow-heater.";
  }
}
