package heatwake.analysis.verdict;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.duty.Symptom;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.site.Heater;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class WouldDecideTest {
  /**
   * Little heat, a coil far below the air and a hot discharge line, superheat and subcooling usual:
   * by the table lost refrigerant behind a valve that still holds, or a coil short of air. Only the
   * air's own cooling tells how much air it gets.
   */
  @Test
  void namesWhatIsNotClippedYetAndWhatShowsEachCauseOnSite() {
    Map<Symptom, Double> grades = new EnumMap<>(Symptom.class);
    Cause.columns().forEach(symptom -> grades.put(symptom, 0.0));
    grades.remove(Symptom.AIR_FLOW);
    grades.put(Symptom.EVAPORATING, 1.0);
    grades.put(Symptom.DISCHARGE, 1.0);
    grades.put(Symptom.HEAT, -1.0);
    Attribution attribution = Attribution.of(grades);

    assertThat(attribution.side()).isEqualTo(Side.UNDECIDED);
    assertThat(attribution.rivals()).containsExactly(Cause.UNDERCHARGE);
    List<String> texts = WouldDecide.of(attribution, toKnow(Channel.AIR_IN, Channel.HUMIDITY_IN));
    assertThat(texts)
        .containsExactly(
            "clip air-out",
            "look through the air coil against the light",
            "a certified refrigerant handler recovers and weighs the charge");
  }

  @Test
  void everyRivalSideIsToldApart() {
    // Low heat and nothing else known: water, refrigerant and air all explain it.
    Attribution attribution = Attribution.of(Map.of(Symptom.HEAT, -1.0));
    assertThat(attribution.rivals())
        .extracting(Cause::side)
        .doesNotHaveDuplicates()
        .contains(Side.WATER)
        .doesNotContain(attribution.likeliest().side());
    List<String> texts = WouldDecide.of(attribution, toKnow(Channel.PRESSURE_DISCHARGE));
    assertThat(texts.get(0)).startsWith("clip ").contains("temp-liquid", "temp-discharge");
    assertThat(texts.get(0)).doesNotContain("pressure-discharge");
    // A technician at the pad reads one line of what to clip, not one for each symptom.
    assertThat(texts).filteredOn(text -> text.startsWith("clip ")).hasSize(1);
  }

  @Test
  void whatTheRigStatesIsNotAskedFor() {
    Attribution attribution = Attribution.of(Map.of(Symptom.HEAT, -1.0));
    assertThat(WouldDecide.of(attribution, toKnow())).noneMatch(text -> text.startsWith("state"));
    assertThat(WouldDecide.of(attribution, new ToKnow(Set.of(), Heater.UNKNOWN)))
        .anyMatch(text -> text.startsWith("state ") && text.contains("heater.refrigerant"));
  }

  /** Not one line for each of the figures that a hot standing heater leaves unknown. */
  @Test
  void whatIsClippedAndStillNotKnownIsOneLine() {
    Attribution attribution = Attribution.of(Map.of(Symptom.HEAT, -1.0));
    assertThat(WouldDecide.of(attribution, toKnow(Channel.values())))
        .filteredOn(text -> text.startsWith("see under what is missing"))
        .singleElement()
        .asString()
        .contains("superheat", "subcooling");
  }

  private static ToKnow toKnow(Channel... clipped) {
    return new ToKnow(Set.of(clipped), Rigs.typicalHeater());
  }
}
