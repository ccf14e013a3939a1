package heatwake.dashboard.present;

import java.util.List;

/**
 * The cautions that go with every place where the tool tells a person to touch something. Window,
 * report and {@code docs/cautions.md} all show these sentences; a test keeps the page the same.
 */
public final class Cautions {
  private static final List<String> ALL =
      List.of(
          "Electricity and water kill. Switch off and lock out the supply before you open the heater or"
              + " touch a wire, and prove it dead; work on mains is for licensed electricians.",
          "Bonding, grounding and protective devices are decided by the local code and the inspector, not"
              + " by this tool. It only points at figures worth a second look.",
          "The fan starts without warning. Keep hands, hair, cables and probes out of its way.",
          "The refrigerant circuit is under pressure, hot on one side and freezing on the other. Gauges,"
              + " charging and opening it are for certified people with the right equipment; some"
              + " refrigerants burn.",
          "Clip temperature probes to the outside of pipes; never open a water or refrigerant line for"
              + " them while the heater runs or the line is under pressure.",
          "Keep cables and loggers dry and off the ground, and supply them from an outlet that the code"
              + " allows beside a pool.",
          "Local codes, the maker's instructions and licensed practice have the last word over anything"
              + " shown here.");

  private Cautions() {}

  /** The sentences, the gravest first. */
  public static List<String> all() {
    return ALL;
  }
}
