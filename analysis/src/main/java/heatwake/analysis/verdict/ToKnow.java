package heatwake.analysis.verdict;

import heatwake.analysis.duty.Symptom;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Rating;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * What to clip and what to state so that symptoms become known: each channel and each line of the
 * rig once, however many symptoms want it.
 */
final class ToKnow {
  private static final String REST =
      "record half an hour of rest with pressure-discharge, air-ambient and water-in";

  private final Set<Channel> clipped;
  private final Heater heater;

  /**
   * @param clipped the channels that are read already
   * @param heater what is stated already
   */
  ToKnow(Set<Channel> clipped, Heater heater) {
    this.clipped = clipped;
    this.heater = heater;
  }

  /** One sentence for what to clip, one for what to state, and what else there is to do. */
  List<String> of(Collection<Symptom> unknown) {
    Set<Channel> missing = EnumSet.noneOf(Channel.class);
    Set<String> unstated = new LinkedHashSet<>();
    List<String> texts = new ArrayList<>();
    List<String> unexplained = new ArrayList<>();
    for (Symptom symptom : unknown) {
      List<Channel> toClip =
          channels(symptom).stream().filter(channel -> !clipped.contains(channel)).toList();
      List<String> toState = unstated(symptom);
      if (symptom == Symptom.STANDING) {
        texts.add(REST);
      } else if (toClip.isEmpty() && toState.isEmpty()) {
        unexplained.add(symptom.words());
      }
      missing.addAll(toClip);
      unstated.addAll(toState);
    }
    if (!unexplained.isEmpty()) {
      texts.add("see under what is missing why this is not known: " + listed(unexplained));
    }
    if (!unstated.isEmpty()) {
      texts.add(0, "state " + listed(unstated));
    }
    if (!missing.isEmpty()) {
      texts.add(0, "clip " + listed(missing.stream().map(Channel::id).toList()));
    }
    return texts;
  }

  private static String listed(Collection<String> names) {
    List<String> all = List.copyOf(names);
    int last = all.size() - 1;
    return last == 0
        ? all.get(0)
        : String.join(", ", all.subList(0, last)) + " and " + all.get(last);
  }

  private static List<Channel> channels(Symptom symptom) {
    return switch (symptom) {
      case HEAT -> List.of(Channel.WATER_IN, Channel.WATER_OUT, Channel.FLOW_HEATER);
      case COP, POWER -> List.of(Channel.POWER);
      case UNEXPLAINED_POWER -> List.of(Channel.POWER, Channel.PRESSURE_DISCHARGE);
      case FLOW -> List.of(Channel.FLOW_HEATER);
      case CONDENSING -> List.of(Channel.PRESSURE_DISCHARGE, Channel.WATER_OUT);
      case EVAPORATING -> List.of(Channel.PRESSURE_SUCTION, Channel.AIR_IN);
      case SUPERHEAT -> List.of(Channel.PRESSURE_SUCTION, Channel.TEMP_SUCTION);
      case SUBCOOLING -> List.of(Channel.PRESSURE_DISCHARGE, Channel.TEMP_LIQUID);
      case DISCHARGE -> List.of(Channel.PRESSURE_DISCHARGE, Channel.TEMP_DISCHARGE);
      case AIR_FLOW -> List.of(Channel.AIR_IN, Channel.AIR_OUT, Channel.HUMIDITY_IN);
      case STANDING -> List.of();
    };
  }

  private List<String> unstated(Symptom symptom) {
    return switch (symptom) {
      case HEAT -> heater.ratings().isEmpty() ? List.of("[[heater.rating]]") : List.of();
      case COP, POWER, UNEXPLAINED_POWER ->
          heater.ratings().stream().map(Rating::powerW).noneMatch(one -> one.isPresent())
              ? List.of("[[heater.rating]] with power")
              : List.of();
      case FLOW -> heater.flowMinM3PerS().isEmpty() ? List.of("heater.flow-min") : List.of();
      case CONDENSING, EVAPORATING, SUPERHEAT, SUBCOOLING, DISCHARGE ->
          heater.refrigerant().isEmpty() ? List.of("heater.refrigerant") : List.of();
      case AIR_FLOW, STANDING -> List.of();
    };
  }
}
