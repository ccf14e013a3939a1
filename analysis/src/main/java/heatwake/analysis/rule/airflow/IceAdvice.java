package heatwake.analysis.rule.airflow;

import java.util.List;

/**
 * Where to look for what ices a coil.
 *
 * @param causes the likeliest first
 * @param nextCheck what to do
 */
record IceAdvice(List<String> causes, String nextCheck) {
  /** Where every coil ices: the ice is not melted in time. */
  static final IceAdvice IN_FROST =
      new IceAdvice(
          List.of(
              "defrost that does not come: coil sensor loose or control faulty",
              "dirty coil or weak fan, so that the coil runs colder than it should",
              "reversing valve that does not change over",
              "air colder than the heater is made for"),
          "Look at the coil just before a defrost: ice right through the fins means that defrosts"
              + " come too late. Check the defrost sensor's seat.");

  /** Where no sound coil ices: it runs colder than it should. */
  static final IceAdvice IN_WARM_AIR =
      new IceAdvice(
          List.of(
              "dirty coil fins",
              "fan weak, slow or fitted wrong way",
              "too little refrigerant, or an expansion valve letting too little through"),
          "Look through the coil against the light and wash it if needed; see that the fan turns"
              + " the right way at full speed (power off and fan still before reaching in).");

  /** Said of ice in warm air. */
  static final String NO_SOUND_COIL = "; a sound coil does not ice in such air";
}
