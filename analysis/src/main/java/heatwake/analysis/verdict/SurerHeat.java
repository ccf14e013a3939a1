package heatwake.analysis.verdict;

import heatwake.analysis.duty.Duty;
import heatwake.analysis.duty.DutyFigure;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What would make the heat against the nameplate surer: what is not done yet of what it lacks. */
final class SurerHeat {
  private SurerHeat() {}

  static List<String> of(Duty mean, Evidence evidence) {
    if (isPlateInDoubt(mean)) {
      return List.of(
          evidence.timeline().has(Channel.HUMIDITY_IN)
              ? "state more [[heater.rating]] points near these conditions: what the nameplate"
                  + " promises is the uncertain part of it"
              : "clip humidity-in: what the nameplate promises in this air is the uncertain part of"
                  + " it");
    }
    List<String> advice = new ArrayList<>();
    if (evidence.zero().isEmpty()) {
      advice.add(
          "zero the probe pair: let the water circulate for 10 min with the compressor at rest");
    }
    if (!evidence.timeline().has(Channel.FLOW_HEATER)) {
      advice.add("clip flow-heater");
    }
    return advice.isEmpty() ? List.of("better probes on water-in, water-out and flow") : advice;
  }

  /** What lacks so that heat can be held against the nameplate at all. */
  static String againstThePlate(Duty mean, Evidence evidence) {
    if (!mean.has(DutyFigure.HEAT)) {
      return "clip a flow meter, so that the heat can be held against the nameplate";
    }
    if (evidence.recording().rig().heater().ratings().isEmpty()) {
      return "state the nameplate's heat as [[heater.rating]]";
    }
    boolean hasAir =
        evidence.timeline().has(Channel.AIR_IN) || evidence.timeline().has(Channel.AIR_AMBIENT);
    return "clip "
        + (hasAir ? "water-in" : "air-in or air-ambient")
        + ", on which the heat that the nameplate promises depends";
  }

  /** Whether the expected heat brings more of the doubt than the heat that is held against it. */
  private static boolean isPlateInDoubt(Duty mean) {
    Optional<Estimate> expected = mean.of(DutyFigure.EXPECTED_HEAT);
    Optional<Estimate> heat = mean.of(DutyFigure.HEAT);
    return expected.isPresent() && heat.isPresent() && share(expected.get()) > share(heat.get());
  }

  private static double share(Estimate figure) {
    return figure.standard() / Math.abs(figure.value());
  }
}
