package heatwake.analysis.docs;

import heatwake.analysis.duty.Symptom;
import heatwake.analysis.verdict.Cause;
import heatwake.analysis.verdict.ConsequenceTable;
import heatwake.analysis.verdict.Consequent;
import heatwake.analysis.verdict.FlagWeight;
import heatwake.analysis.verdict.ImpossibleHeat;
import java.util.Comparator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** The page of the reasoning is made from its tables; {@link Page} tells how to make it anew. */
class VerdictPageTest {
  private static final Page PAGE = new Page("verdict.md");

  @Test
  void isUpToDate() {
    PAGE.assertSame(text());
  }

  private static String text() {
    StringBuilder text = new StringBuilder(20_000);
    text.append(
        INTRODUCTION.formatted(
            PAGE.command("VerdictPageTest"),
            ImpossibleHeat.RESTS_ON_HEAT.stream()
                .sorted()
                .map("`%s`"::formatted)
                .collect(Collectors.joining(", ")),
            number(ImpossibleHeat.MOST_RATIO)));
    text.append("| explains | what follows from it |\n|---|---|\n");
    ConsequenceTable.explained()
        .forEach(
            (cause, following) ->
                text.append(
                    "| `%s` | %s |%n"
                        .formatted(
                            cause,
                            following.stream()
                                .sorted(Comparator.comparing(Consequent::rule))
                                .map(VerdictPageTest::entry)
                                .collect(Collectors.joining(", ")))));
    text.append(SYMPTOMS);
    text.append("| symptom | sound from | to |\n|---|---|---|\n");
    for (Symptom symptom : Symptom.values()) {
      text.append(
          "| %s | %s | %s |%n"
              .formatted(
                  symptom.words(), number(symptom.normalFrom()), number(symptom.normalTo())));
    }
    text.append(CAUSES);
    text.append(
        "| cause | side | %s | head start |%n"
            .formatted(
                Cause.columns().stream()
                    .map(symptom -> symptom.name().toLowerCase(java.util.Locale.ROOT))
                    .map(name -> name.replace('_', ' '))
                    .collect(Collectors.joining(" | "))));
    text.append("|---|---|").append("---|".repeat(Cause.columns().size() + 1)).append('\n');
    for (Cause cause : Cause.values()) {
      text.append(
          "| %s | %s | %s | %s |%n"
              .formatted(
                  cause.words(),
                  cause.side().id(),
                  cause.row().values().stream()
                      .map(cell -> cell.sign())
                      .collect(Collectors.joining(" | ")),
                  number(cause.frequency())));
    }
    text.append(WEIGHTS);
    text.append("| flag | weight |\n|---|---|\n");
    FlagWeight.byRule()
        .forEach((rule, weight) -> text.append("| `%s` | %.2f |%n".formatted(rule, weight)));
    text.append(HEALTH);
    return text.toString();
  }

  private static String entry(Consequent consequent) {
    String words = consequent.words();
    return "`%s`".formatted(consequent.rule()) + (words.isEmpty() ? "" : " (" + words + ")");
  }

  private static String number(double value) {
    return value == Math.rint(value) ? "%.0f".formatted(value) : String.valueOf(value);
  }

  private static final String INTRODUCTION =
      """
      # From flags to a verdict

      Made from the tables in the code (package `heatwake.analysis.verdict`); %s

      The verdict is reached in five steps. Each is a table, so that a reader can check the code against this
      page line by line.

      1. Every rule is put before the evidence ([rules.md](rules.md)).
      2. **A doubtful probe silences what rests on it.** `probes-swapped`, `probe-slipped`, `probe-stuck` and
         `probe-fault` silence every machine flag that rests on the readings they accuse and stands for at least
         30 %% of its time together with them. `clock-step` silences `short-cycling`, `restart-too-soon` and
         `data-gap` around the jump. `probe-offset` silences nothing: the offset is subtracted. The measurement
         flag says what it silenced.
         Without the readings that `probe-slipped` and `probe-stuck` accuse, a machine flag has to be raised anew,
         or it does not stand.
      3. **Heat that cannot be** hands %s to the measurement: heat beyond doubt below nothing while
         the air does not leave warmer than it enters (a compressor adds its work to the water: first law), or
         beyond doubt above %s of the nameplate's (plates are tolerated to be 5 %% off, and the fastest inverters
         run a third above their rated speed: common practice), or that grew by a third to more than 1.2 of it
         while the power stayed; or where the run's COP is beyond doubt above half of Carnot's between air and
         water, or above 20 (no air-source heater reaches half of Carnot's, and the best reach 16 at their least
         speed in air as warm as the water: common practice). Such a COP is said even if the heater never ran
         steadily. Or a heat likelier than not above 1.5 of the nameplate's, and beyond doubt above the 1.05 that
         plates are tolerated to be off, at a COP above 1.2 of it that exceeds it by its expanded uncertainty (a
         compressor that gives more than its rated heat does so at a worse COP: physics of exchangers).
         `setpoint-unreachable` goes with it where the pool has no probe of its own: a clip that makes such a heat
         is no thermometer of the pool.
         Else **low heat, low COP, approaches and high pressure get a side** from the table of causes below, or none.
      4. **One cause, one flag.** A flag that another explains is named in that one's evidence:

      """;

  private static final String SYMPTOMS =
      """

      A flag follows while its cause stands; a pressure switch may trip only once the circuit no longer comes to
      the steady state in which the cause is seen, so what it does may come later. A flag of probes explains
      only flags that accuse the same probe, and one that is only worth knowing explains nothing. Why the
      conditions: a filter that loads up takes nothing of heat and COP at first; the heat transfer falls by no
      more than the water side's own (Dittus and Boelter, from memory); little water strains a motor only by
      the condensing pressure it brings; a starved compressor draws less power, and a motor at low voltage takes
      more current for the same power, hardly more power.

      5. The flags that are left are weighed.

      ## Symptoms

      Each figure of the running heater is held against the band in which it lies on sound heaters. The bands are
      common practice and wide, because heaters differ. A figure counts only by as much as it lies outside its
      band by more than its own standard uncertainty; how far makes its grade, from -1 to 1.

      """;

  private static final String CAUSES =
      """

      Approaches are brought to the greatest rated heat, since an exchanger's approach goes with the heat it
      passes (what the nameplate promises, where heat is measured worse than to 15 % and worse than that); the coil's is also brought to air of 27 °C and 80 % by its enthalpy potential, since dry air takes
      a colder coil. A blend's approaches count from the middle of its glide.
      Much subcooling counts only as far as its share of what the entering water allows (bubble point less entering
      water) bears it out: not at all where that is smaller than 0.57 (6 K of 10.5 K: common practice) by the spread
      of sound heaters (0.1, ours) and its own uncertainty, in full where it is greater by as much. Scale lowers the share though a high head
      raises the subcooling; liquid backed up and gas raise it. Little subcooling beside superheat under 2 K by its
      uncertainty does not count: that liquid stands in the flooded coil.

      ## Causes

      How each symptom stands under each cause. `+` above its band, `(+)` mostly above (an expansion valve may
      hold it), `-` below, `(-)` mostly below, `=` within, `~` about within, `^` within or above, `v` within or below, `.` says nothing.

      The signs of leakage, valve leak, restriction, condenser and evaporator fouling follow the rule table of
      Rossi and Braun (HVAC&R Research 3(1), 1997, 19-37; checked in `AttributionTest`). That table describes a
      fixed-orifice air conditioner. **Carrying it over to a pool heater is reasoned, not published**: the
      condenser's medium is water, little flow shows in the flow itself while scale does not, and an expansion
      valve hides a lost charge from the superheat. Overcharge and non-condensable gas are trade knowledge from
      memory. The last two rows are ours: they keep a strained motor and a misleading probe from being taken for a
      fault of the circuit. Little air counts against misled heat where the heat is not below its band: the air
      is worked out from it, and half of it would have to be missing.

      """;

  private static final String WEIGHTS =
      """

      A cause's agreement is its head start (what is met often over what is met seldom: common practice) plus, for
      every known symptom, between -1 (speaks against) and 1 (speaks for); a symptom that should show and does
      not counts -0.5. The side of the best cause is named if it agrees by at least 0.6, leads the best cause of
      every other side by at least 0.5, and at least one symptom does show. Otherwise the side is undecided, and the
      verdict names the causes that agree about alike, what to clip to tell them apart and what shows each of them on
      site: **naming the wrong side is worse than naming
      none**.

      ## Weights

      How much a flag speaks for its side; a flag that is only worth knowing (info) counts 40 %. Flags of one side
      add up as probabilities do, 1 - (1 - a)(1 - b); a flag with a side from the table of causes is multiplied by
      how sure that side is. The best supported side is the verdict, less sure by 40 % of what the next side has;
      a side with an alarm and a support of 0.5 comes before those that have only warnings, since what may harm the
      heater is mended first (ours).
      A `data-gap` weighs nothing where others of the heater were read on meanwhile and each channel was read for
      half and more of the time in which the heater may have run (ours), or tells of the site alone (wind, pool
      probe, pump, voltage).
      Beside a machine flag that rests on other readings, a measurement flag counts 60 %. So does the pool's beside
      a flag of the machine, its water, air or supply that does not rest on the heat: open pools lose what they are
      given beside sound and ailing heaters alike, and the heater is mended first (ours). Of two sides that weigh
      alike (within 0.03) the one whose flag stood longer comes first (ours). `low-heater-flow` told by
      the rise alone counts 0.65: a loose clip reads as much. Flags speak only beyond doubt, so where several sides
      have one a low confidence leaves open which comes first, not whether they are so.
      Where the verdict is the pool or the schedule and no flag has a word of the machine, what [health](#health) says
      of the heater itself is said beside it, with what would settle it.

      """;

  private static final String HEALTH =
      """

      ## Health

      Without a flag of weight (a support under 0.35) the heater is called healthy only if something speaks for it:

      | what is known | verdict | confidence |
      |---|---|---|
      | heat likelier above than below 90 % of the nameplate's, under which `low-heat` calls it low | healthy | 0.95, less 2 for each unit of uncertainty above 2 %, at least 0.5; no more than the probability (normal distribution) that heat is above 90 % |
      | the same, but one of approaches (not that of a coil that may be iced), superheat, subcooling or standing pressure outside its band by a grade over 0.25 | healthy | 0.5 |
      | the same with that figure so far out that it counts in full at two standard uncertainties less (ours), or condensing above its band by 3 standard uncertainties at a COP under 92 % of the nameplate's or not known | undecided: whether the figure holds | 0 |
      | the same within their bands, but condensing more than 8 K above the leaving water at full load by its standard uncertainty (ours), and a COP under 92 % of the nameplate's or not known | healthy, with what to look for | 0.6 |
      | the same beside a COP likelier below 88 % than above: a head that costs power is not the heater's own way | undecided | 0 |
      | the same, but two or more of them (little superheat and little subcooling of a flooded coil count as one: what stands in the coil is missing in the condenser) | undecided | 0 |
      | heat more than 8 % low, not beyond doubt, and the coil's approach above 12.5 K (the middle of what coils are laid out for) by its uncertainty, unless it may be iced (below -0.5 °C in air below 12 °C) | undecided: look at the coil | 0 |
      | heat likelier below 90 % than above, not beyond doubt | undecided: what would make the heat surer | 0 |
      | heat beyond two standard uncertainties from 100 % and 8 to 10 % low, or more than 20 % above the nameplate's, but not beyond doubt | healthy | 0.5 |
      | power below the nameplate's beyond doubt, at part speed (see `low-heat`; never where `heater.speed` is fixed), and approaches, superheat, subcooling and standing pressure in their bands, or approaches below | healthy | as by heat from the uncertainty of the COP, at most 0.7; at most 0.5 where that is likelier below 88 % of the nameplate's than above |
      | the same, but the expanded interval of the COP goes below 75 % of the nameplate's, as low as what fails leaves it (ours): it proves nothing | undecided: what would make the heat surer | 0 |
      | the same beside both approaches and superheat not above their bands by their standard uncertainty, and a COP of 92 % and more | healthy | 0.45 |
      | the same, but one of them outside | undecided: a run at full speed | 0 |
      | the same within their bands, but the power never up to 95 % and the water never known to be within 1.5 K of the set temperature: nothing is known to ask for part speed | undecided: see the setting, a run at full power, state `heater.speed` | 0 |
      | heat that cannot be (step 3) | measurement | 0.7 |
      | the whole heat at little power: 95 % of the nameplate's and more, above 90 % with a probability of 0.9 (ours) | healthy, as by heat | |
      | what draws like a fan (more than a crankcase heater's 90 W, or twice and more what a rest of 3 min draws) stayed on for more than 1 h, in air above 15 °C for 15 min (ours), after the last stop, or where the compressor never ran, to the end of the run, with the water likelier more than 0.3 K below its set temperature than not, in air above 7 °C | undecided: whether the fan turns | 0 |
      | the compressor stopped with the water more than 0.5 K below its set temperature beyond doubt, and stayed away for more than 1 h to the end of the run though water moved | undecided: fault memory, or who switched it off | 0 |
      | the compressor never ran in more than 1 h of flowing water more than 0.5 K below its set temperature beyond doubt | undecided: switch, timer, set temperature, fault shown | 0 |
      | heat more than 20 % above the nameplate's, beyond doubt | undecided: check the flow meter | 0 |
      | no heat; both approaches and all else within their bands, and the power | healthy | 0.6 |
      | the same without power | healthy | 0.45 |
      | less | undecided, with what to clip or state | 0 |

      In steady running at a voltage beyond 10 % of nominal, or a current above 105 % of the nameplate's, though not for
      certain enough for a flag, that is said, and the heater is healthy by 0.5 at the most.
      """;
}
