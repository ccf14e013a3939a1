package heatwake.analysis.rule.refrigerant;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.AbsolutePressure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.GaugePressure;
import heatwake.analysis.refrigerant.Saturation;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.site.Rig;
import heatwake.analysis.uncertainty.ProbeUncertainty;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;

/** High side near the nameplate's or the refrigerant's limit. */
public final class HighPressure implements Rule {
  /** Where high-pressure switches open, K; common practice. */
  private static final double SWITCHES_OPEN_K = 273.15 + 65;

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
    if (!evidence.timeline().has(Channel.PRESSURE_DISCHARGE)) {
      return Outcome.notEnoughData("no pressure-discharge reading");
    }
    Rig rig = evidence.recording().rig();
    OptionalDouble limit = HighSideLimit.pa(rig);
    if (limit.isEmpty()) {
      return Outcome.notEnoughData(
          "neither the nameplate's greatest pressure nor heater.refrigerant in the rig");
    }
    OptionalDouble most = rig.heater().pressureMaxPa();
    return above(
        evidence,
        limit.getAsDouble(),
        most.isPresent()
            ? peak -> ofPermitted(peak, most.getAsDouble())
            : peak -> condensing(peak, rig));
  }

  private static String ofPermitted(HighSidePeak peak, double mostPa) {
    return "High side "
        + Wording.megapascals(peak.highestPa())
        + stops(peak)
        + ", "
        + Wording.percent(peak.highestPa() / mostPa)
        + " of the greatest permitted "
        + Wording.megapascals(mostPa);
  }

  private static String condensing(HighSidePeak peak, Rig rig) {
    Saturation saturation = Saturation.of(rig.heater().refrigerant().orElseThrow());
    AbsolutePressure atmosphere = Atmosphere.standard(rig.site().altitudeM());
    double highestPa = saturation.dewPressure(saturation.highestK()).gauge(atmosphere).pa();
    double condensingK =
        saturation.dewTemperatureK(
            new GaugePressure(Math.min(peak.highestPa(), highestPa)).absolute(atmosphere));
    return "Condensing at "
        + Wording.celsius(condensingK)
        + stops(peak)
        + (condensingK > SWITCHES_OPEN_K ? ", above" : ", near")
        + " the 65 °C at which high-pressure switches open";
  }

  private Outcome above(
      Evidence evidence, double limitPa, Function<HighSidePeak, String> sentence) {
    double uncertaintyPa =
        ProbeUncertainty.of(evidence.recording().rig(), Channel.PRESSURE_DISCHARGE).at(limitPa);
    return HighSidePeak.above(evidence, limitPa, uncertaintyPa)
        .map(peak -> Outcome.flagged(flag(peak, sentence.apply(peak))))
        .orElseGet(Outcome::clear);
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
