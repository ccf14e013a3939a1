package heatwake.analysis.verdict;

import heatwake.analysis.duty.Symptom;
import heatwake.analysis.finding.Side;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What ails a heater that gives too little, as a row of the reasoning table: how each symptom
 * stands when this is the cause. The code below is the table; the page of verdicts in the
 * documentation is made from it.
 *
 * <p>Where the signs come from: the rule table of Rossi and Braun (HVAC&amp;R Research 3(1), 1997,
 * 19-37) for a fixed-orifice air conditioner in cooling. Carrying it over to a pool heater is
 * reasoned, not published: the condenser's medium is water; little flow raises the water's rise and
 * shows in the flow, scale does not; an expansion valve holds the superheat until it is wide open.
 * Overcharge and non-condensable gas are from memory of the trade.
 */
public enum Cause {
  //                      flow cond evap  sh   sc  disch air heat power unexplained standing
  LOW_WATER_FLOW(
      Side.WATER,
      "too little water through the heater",
      0.2,
      "-    +    v    v    .    ^     ~   v    ^     v           v"),
  SCALED_CONDENSER(
      Side.WATER,
      "scale or dirt in the condenser",
      0.3,
      "=    +    v    v    v    ^     ~   v    ^     v           v"),
  UNDERCHARGE(
      Side.REFRIGERANT,
      "too little refrigerant",
      0.2,
      "=    v    (+)  (+)  -    ^     .   -    v     v           v"),
  RESTRICTION(
      Side.REFRIGERANT,
      "a restriction in the liquid line",
      0,
      "=    v    (+)  (+)  +    ^     .   -    v     v           v"),
  OVERCHARGE(
      Side.REFRIGERANT,
      "too much refrigerant",
      0,
      "=    +    v    v    +    ^     ~   v    ^     v           v"),
  NON_CONDENSABLES(
      Side.REFRIGERANT,
      "air in the refrigerant",
      0,
      "=    +    v    v    (+)  ^     ~   v    ^     v           +"),
  WORN_COMPRESSOR(
      Side.REFRIGERANT,
      "a worn compressor",
      0,
      "=    v    v    v    v    .     ~   -    -     v           v"),
  DIRTY_COIL(
      Side.AIRFLOW,
      "a dirty air coil",
      0.2,
      "=    v    +    v    v    .     v   (-)  v     v           v"),
  WEAK_AIRFLOW(
      Side.AIRFLOW,
      "too little air through the coil",
      0.2,
      "=    v    +    v    v    .     -   (-)  v     v           v"),
  STRAINED_MOTOR(
      Side.ELECTRICAL,
      "a motor that draws too much, or other loads on the meter",
      0,
      "=    ~    ~    ~    ~    .     ~   =    ^     +           v"),
  MISLED_HEAT(
      Side.MEASUREMENT,
      "flow or temperature probes that mislead",
      0,
      "~    ~    ~    =    =    =     .   .    =     =           v");

  /** The columns of the table, in order. */
  private static final List<Symptom> COLUMNS =
      List.of(
          Symptom.FLOW,
          Symptom.CONDENSING,
          Symptom.EVAPORATING,
          Symptom.SUPERHEAT,
          Symptom.SUBCOOLING,
          Symptom.DISCHARGE,
          Symptom.AIR_FLOW,
          Symptom.HEAT,
          Symptom.POWER,
          Symptom.UNEXPLAINED_POWER,
          Symptom.STANDING);

  private final Side side;
  private final String words;
  private final double frequency;
  private final String signs;

  Cause(Side side, String words, double frequency, String signs) {
    this.side = side;
    this.words = words;
    this.frequency = frequency;
    this.signs = signs;
  }

  /** The symptoms that tell causes apart, in the order of the table. */
  public static List<Symptom> columns() {
    return COLUMNS;
  }

  /** Whose side it is. */
  public Side side() {
    return side;
  }

  /** What it is, in plain words. */
  public String words() {
    return words;
  }

  /** Head start of what is met often over what is met seldom; common practice. */
  public double frequency() {
    return frequency;
  }

  /** How each symptom stands when this is the cause, in the order of the columns. */
  public Map<Symptom, Expectation> row() {
    List<String> cells = List.of(signs.split("\\s+", -1));
    Map<Symptom, Expectation> row = new LinkedHashMap<>();
    for (int i = 0; i < COLUMNS.size(); i++) {
      row.put(COLUMNS.get(i), Expectation.of(cells.get(i)));
    }
    return row;
  }
}
