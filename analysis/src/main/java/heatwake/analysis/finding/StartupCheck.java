package heatwake.analysis.finding;

import java.util.OptionalLong;
import java.util.function.UnaryOperator;

/**
 * One line of the start-up list.
 *
 * @param check which check
 * @param result what came of it
 * @param evidence what was seen, or what is missing to see it
 * @param atMs the moment it was decided, UTC milliseconds
 */
public record StartupCheck(Item check, Result result, String evidence, OptionalLong atMs) {

  /** This check with its evidence said otherwise. */
  public StartupCheck reworded(UnaryOperator<String> said) {
    return new StartupCheck(check, result, said.apply(evidence), atMs);
  }

  /** The checks of the list, in the order in which a start-up goes through them. */
  public enum Item {
    PROBE_ZERO("probe-zero"),
    STANDING_PRESSURE("standing-pressure"),
    FLOW_MADE("flow-made"),
    FAN_START("fan-start"),
    COMPRESSOR_START("compressor-start"),
    PRESSURE_RISE("pressure-rise"),
    TEMPERATURE_RISE("temperature-rise"),
    HEATER_FLOW("heater-flow"),
    CURRENT("current"),
    VOLTAGE("voltage"),
    RATED_HEAT("rated-heat"),
    FLOW_LOSS_STOP("flow-loss-stop"),
    RESTART_DELAY("restart-delay"),
    SETPOINT_STOP("setpoint-stop");

    private final String id;

    Item(String id) {
      this.id = id;
    }

    public String id() {
      return id;
    }
  }

  /** Outcome of a check. */
  public enum Result {
    PASS("pass"),
    FAIL("fail"),
    /** The probes are there, but what the check waits for did not happen in this run. */
    NOT_SEEN("not-seen"),
    /** A probe it needs is not clipped. */
    NOT_MEASURED("not-measured");

    private final String id;

    Result(String id) {
      this.id = id;
    }

    public String id() {
      return id;
    }
  }
}
