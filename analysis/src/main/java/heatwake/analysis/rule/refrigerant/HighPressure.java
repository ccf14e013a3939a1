package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** High side near the nameplate's or the refrigerant's limit. */
public final class HighPressure implements Rule {
  /** Near the nameplate's greatest pressure: this part of it; ours. */
  private static final double NEAR_SHARE = 0.9;

  /**
   * Without a nameplate limit: condensing above this, Cel. High-pressure switches of pool heaters
   * open around 65 Cel (R-410A: about 4.2 MPa); common practice.
   */
  private static final double HOT_CONDENSING_K = 273.15 + 60;

  /** Relative change of saturation pressure per kelvin around 60 Cel (Clausius-Clapeyron). */
  private static final double SATURATION_SLOPE_PER_K = 0.021;

  @Override
  public String id() {
    return "high-pressure";
  }

  @Override
  public String summary() {
    return "The high side comes near the nameplate's or the refrigerant's limit.";
  }

  @Override
  public String needs() {
    return "pressure-discharge and the nameplate's greatest pressure or heater.refrigerant";
  }

  @Override
  public String limits() {
    return "90 % (ours) of the nameplate's greatest pressure; where it is not stated, a condensing"
        + " temperature of 60 °C (switches open around 65 °C: common practice). By more than 3"
        + " standard uncertainties, for 60 s on end, or as the compressor stops, twice or more (a"
        + " pressure switch cuts the peak short: ours).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Timeline timeline = evidence.timeline();
    if (!timeline.has(Channel.PRESSURE_DISCHARGE)) {
      return Outcome.notEnoughData("no pressure-discharge reading");
    }
    double[] pressure = timeline.of(Channel.PRESSURE_DISCHARGE);
    OptionalDouble most = evidence.recording().rig().heater().pressureMaxPa();
    if (most.isPresent()) {
      double limitPa = NEAR_SHARE * most.getAsDouble();
      return HighSidePeak.above(evidence, pressure, uncertaintyPa(evidence, limitPa), limitPa)
          .map(
              peak ->
                  Outcome.flagged(
                      flag(
                          peak,
                          "High side "
                              + Wording.megapascals(peak.highest())
                              + stops(peak)
                              + ", "
                              + Wording.percent(peak.highest() / most.getAsDouble())
                              + " of the greatest permitted "
                              + Wording.megapascals(most.getAsDouble()))))
          .orElseGet(Outcome::clear);
    }
    Optional<double[]> condensing = evidence.trace(Trace.Kind.CONDENSING);
    if (condensing.isEmpty()) {
      return Outcome.notEnoughData(
          "neither the nameplate's greatest pressure nor heater.refrigerant in the rig");
    }
    double usualPa = timeline.of(Channel.PRESSURE_DISCHARGE)[0];
    double uncertaintyK =
        uncertaintyPa(evidence, usualPa) / Math.max(1, Math.abs(usualPa)) / SATURATION_SLOPE_PER_K;
    return HighSidePeak.above(evidence, condensing.get(), uncertaintyK, HOT_CONDENSING_K)
        .map(
            peak ->
                Outcome.flagged(
                    flag(
                        peak,
                        "Condensing at "
                            + Wording.celsius(peak.highest())
                            + stops(peak)
                            + ", near the 65 °C at which high-pressure switches open")))
        .orElseGet(Outcome::clear);
  }

  private static double uncertaintyPa(Evidence evidence, double pressurePa) {
    return ProbeUncertainty.of(evidence.recording().rig(), Channel.PRESSURE_DISCHARGE)
        .at(pressurePa);
  }

  private static String stops(HighSidePeak peak) {
    return peak.stops() == 0 ? "" : " as the compressor stopped, " + peak.stops() + " times";
  }

  private Flag flag(HighSidePeak peak, String evidence) {
    return new Flag(
        id(),
        Side.REFRIGERANT,
        Severity.ALARM,
        peak.startMs(),
        peak.endMs(),
        evidence,
        List.of(
            "too little water through the heater",
            "scale or dirt on the water side of the condenser",
            "too much refrigerant, or air in the circuit",
            "water warmer than the heater is made for"),
        "See that the full flow goes through the heater; if it does, have a certified refrigerant"
            + " handler check charge and standing pressure.",
        Set.of(Channel.PRESSURE_DISCHARGE));
  }
}
