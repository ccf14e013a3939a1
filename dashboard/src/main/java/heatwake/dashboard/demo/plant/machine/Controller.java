package heatwake.dashboard.demo.plant.machine;

import heatwake.dashboard.demo.plant.fault.Health;

/**
 * The heater's own controller: thermostat, flow switch, fan and compressor in their order, restart
 * delay, defrost, high-pressure cut-out.
 */
public final class Controller {
  /** What it is doing. */
  public enum Stage {
    IDLE,
    /** Called for, waiting out its delays. */
    WAITING,
    /** Fan on, compressor not yet. */
    FAN,
    RUNNING,
    DEFROST,
    /** Compressor stopped, fan still on. */
    RUN_ON
  }

  private static final double SENSOR_LAG_S = 75;
  private static final double CUT_OUT_C = 62;
  private static final double TOO_LOW_C = -27;
  private static final double TOO_HOT_C = 125;
  private static final double LOW_PRESSURE_BLIND_S = 120;
  private static final double CUT_OUT_REST_S = 300;
  private static final double DEFROSTS_BELOW_C = 12;
  private static final double FROZEN_C = -1.5;
  private static final double TOO_COLD_TO_THAW_C = 4;
  private static final double CLEAN_AFTER_S = 360;
  private static final double CHOKED_K = 4;
  private static final double LONGEST_DEFROST_S = 480;
  private static final double HUM_EVERY_S = 180;
  private static final double HUM_S = 4;
  private static final double SLOWEST = 0.4;
  private static final double FIRST_SPEED = 0.3;

  private final HeaterDesign.Sequence sequence;
  private final boolean inverter;
  private final double setpointC;
  private Stage stage = Stage.IDLE;
  private boolean calls;
  private double stageS;
  private double restedS = 1e6;
  private double frozenS;
  private double sinceDefrostS;
  private boolean tooCold;
  private double cleanC;
  private double lockoutS;
  private double sensedC = Double.NaN;
  private double speed;

  public Controller(HeaterDesign design, double setpointC) {
    this.sequence = design.sequence();
    this.inverter = design.compressor().inverter();
    this.setpointC = setpointC;
  }

  /** What the controller sees in a step. */
  public record Sight(
      boolean enabled,
      boolean flowSwitch,
      double waterInC,
      double riseK,
      double condensingC,
      double evaporatingC,
      double iceKg,
      double airC,
      double dischargeC) {}

  /** Moves on. */
  public void step(double dtS, Sight sight, Health health) {
    sense(dtS, sight, health);
    double reading = sensedC + health.controlShiftK;
    if (reading >= setpointC) {
      calls = false;
    } else if (reading <= setpointC - sequence.hysteresisK() * health.hysteresis) {
      calls = true;
    }
    lockoutS = Math.max(0, lockoutS - dtS);
    boolean may = sight.enabled() && sight.flowSwitch() && calls && lockoutS <= 0;
    if (sequence.defrost() == HeaterDesign.Defrost.AIR) {
      double least = tooCold ? TOO_COLD_TO_THAW_C + 2 : TOO_COLD_TO_THAW_C;
      tooCold = sight.airC() < least;
      may &= !tooCold;
    }
    stageS += dtS;
    if (compressorCalled()) {
      restedS = 0;
    } else {
      restedS += dtS;
    }
    if (compressorCalled() && isBeyondLimits(sight)) {
      lockoutS = CUT_OUT_REST_S;
      may = false;
    }
    move(dtS, may, sight, health);
    double wanted =
        inverter ? Math.max(SLOWEST, Math.min(1, SLOWEST + (setpointC - reading) / 0.8)) : 1;
    speed =
        stage == Stage.RUNNING
            ? Math.max(FIRST_SPEED, speed + (wanted - speed) * Math.min(1, dtS / rampS()))
            : 0;
  }

  private double rampS() {
    return inverter ? 60 : 1;
  }

  private void sense(double dtS, Sight sight, Health health) {
    if (!sight.flowSwitch() && !Double.isNaN(sensedC)) {
      return;
    }
    double felt = sight.waterInC() + health.controlSeesRise * sight.riseK();
    sensedC =
        Double.isNaN(sensedC) ? felt : sensedC + (felt - sensedC) * Math.min(1, dtS / SENSOR_LAG_S);
  }

  private void move(double dtS, boolean may, Sight sight, Health health) {
    switch (stage) {
      case IDLE -> {
        if (may) {
          enter(Stage.WAITING);
        }
      }
      case WAITING -> {
        if (!may) {
          enter(Stage.IDLE);
        } else if (stageS >= sequence.fanDelayS()
            && restedS >= sequence.restartDelayS() * health.restartDelay) {
          enter(Stage.FAN);
        }
      }
      case FAN -> {
        if (!may) {
          enter(Stage.RUN_ON);
        } else if (stageS >= sequence.compressorDelayS()) {
          enter(Stage.RUNNING);
        }
      }
      case RUNNING -> {
        frozenS = sight.evaporatingC() < FROZEN_C ? frozenS + dtS : Math.max(0, frozenS - dtS);
        sinceDefrostS += dtS;
        if (sinceDefrostS < CLEAN_AFTER_S) {
          cleanC = sight.evaporatingC();
        }
        if (!may) {
          enter(Stage.RUN_ON);
        } else if (health.defrosts && sight.airC() < DEFROSTS_BELOW_C && isChoked(sight)) {
          frozenS = 0;
          sinceDefrostS = 0;
          enter(Stage.DEFROST);
        }
      }
      case DEFROST -> {
        boolean clear = sight.iceKg() <= 0 && stageS > 90;
        if (!may) {
          enter(Stage.RUN_ON);
        } else if (clear || stageS > LONGEST_DEFROST_S) {
          enter(sequence.defrost() == HeaterDesign.Defrost.AIR ? Stage.WAITING : Stage.RUNNING);
        }
      }
      case RUN_ON -> {
        if (stageS >= sequence.fanRunOnS()) {
          enter(Stage.IDLE);
        }
      }
    }
  }

  /** High pressure, low pressure once running for a while, or hot discharge gas. */
  private boolean isBeyondLimits(Sight sight) {
    boolean lowPressure =
        stage == Stage.RUNNING && stageS > LOW_PRESSURE_BLIND_S && sight.evaporatingC() < TOO_LOW_C;
    return sight.condensingC() > CUT_OUT_C || lowPressure || sight.dischargeC() > TOO_HOT_C;
  }

  /** Frozen for long, or evaporating much colder than just after the last defrost. */
  private boolean isChoked(Sight sight) {
    return frozenS > sequence.defrostAfterS()
        || (frozenS > 2 * CLEAN_AFTER_S && sight.evaporatingC() < cleanC - CHOKED_K);
  }

  private void enter(Stage next) {
    stage = next;
    stageS = 0;
  }

  private boolean compressorCalled() {
    return stage == Stage.RUNNING
        || (stage == Stage.DEFROST && sequence.defrost() == HeaterDesign.Defrost.REVERSED_CYCLE);
  }

  public Stage stage() {
    return stage;
  }

  /** Whether the thermostat calls for heat. */
  public boolean calls() {
    return calls;
  }

  /** What the parts are told; a dead compressor does not follow. */
  public HeatPump.Orders orders(Health health) {
    boolean defrost = stage == Stage.DEFROST;
    boolean airDefrost = defrost && sequence.defrost() == HeaterDesign.Defrost.AIR;
    boolean fan =
        stage == Stage.FAN || stage == Stage.RUNNING || stage == Stage.RUN_ON || airDefrost;
    return new HeatPump.Orders(
        fan, compressorCalled() && health.compressorStarts, defrost, Math.max(speed, FIRST_SPEED));
  }

  /** Whether the motor stands and hums at this moment. */
  public boolean hums(Health health) {
    return compressorCalled()
        && !health.compressorStarts
        && health.rotorLocks
        && stageS % HUM_EVERY_S < HUM_S;
  }
}
