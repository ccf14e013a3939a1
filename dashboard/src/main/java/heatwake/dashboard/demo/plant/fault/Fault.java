package heatwake.dashboard.demo.plant.fault;

/**
 * What can be wrong with water, machine, air, supply or control. Each constant states how bad mild,
 * moderate and severe are, and what it does to the parts. Faults of probes are elsewhere: they
 * change what is reported, not what happens.
 */
public enum Fault {
  /** Bypass valve too far open: the heater gets too little water. */
  BYPASS_OPEN(2, 3.5, 5.5) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.bypassOpening = level;
    }
  },
  /** Strainer basket full of leaves. */
  STRAINER_BLOCKED(10, 32, 80) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.strainer = level;
    }
  },
  /** Filter that loads up as the run goes on. */
  FILTER_LOADING(1.0, 2.5, 6) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.filter = 1 + level * onset.shareOfRun();
    }
  },
  /** Pump that trips while the flow switch hangs closed; the level is the minutes without water. */
  WATER_STOPS(3, 8, 25) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.flowSwitchStuck = true;
      health.pumpHead = onset.sinceS() < level * 60 ? 0 : 1;
    }
  },
  /** Lime on the condenser. */
  SCALED_CONDENSER(0.75, 0.5, 0.3) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.condenserTransfer = level;
    }
  },
  /** Leaves and dust on the air coil. */
  DIRTY_COIL(0.75, 0.5, 0.3) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.airFlow = level;
      health.coilTransfer = 0.5 + 0.5 * level;
    }
  },
  /** Fan that turns too slowly. */
  WEAK_FAN(0.75, 0.5, 0.3) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.airFlow = level;
      health.fanPower = 0.3 + 0.7 * level;
    }
  },
  /** Cold air from the outlet drawn in again. */
  RECIRCULATION(0.3, 0.5, 0.75) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.recirculation = level;
    }
  },
  /** Too little refrigerant. */
  UNDERCHARGE(0.88, 0.76, 0.6) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.charge = level;
    }
  },
  /** Too much refrigerant. */
  OVERCHARGE(1.12, 1.25, 1.45) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.charge = level;
    }
  },
  /** Air left in the refrigerant circuit; the level is its pressure at 20 Cel in kPa. */
  NON_CONDENSABLES(90, 200, 400) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.trappedAirPa = level * 1e3;
    }
  },
  /** Compressor valves that leak. */
  VALVE_LEAK(0.12, 0.28, 0.5) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.valveLeak = level;
    }
  },
  /** Defrost that never comes. It has no degrees; the weather decides. */
  NO_DEFROST(1, 1, 1) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.defrosts = false;
    }
  },
  /** Controller's sensor that feels the heater's own heat, and too small a difference set. */
  SHORT_CYCLING(0.5, 0.8, 1.1) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.controlSeesRise = level;
      health.hysteresis = 0.5;
      health.restartDelay = 0.5;
    }
  },
  /** Restart delay not kept, as after a bridged timer; stops come from the same cycling. */
  RESTART_DELAY_IGNORED(0.6, 0.3, 0.08) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.restartDelay = level;
      health.controlSeesRise = 1.2;
      health.hysteresis = 0.5;
    }
  },
  /** Thermostat that reads low and so heats past the set temperature. */
  RUNS_PAST_SETPOINT(1.6, 2.5, 4) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.controlShiftK = -level;
    }
  },
  /** Contactor that no longer closes; the level is the part of the run after which it fails. */
  CONTACTOR_DEAD(0.7, 0.4, 0) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.compressorStarts = onset.shareOfRun() < level;
    }
  },
  /** Start capacitor that fails, so that the motor hums and its protector opens. */
  CAPACITOR_DEAD(0.7, 0.4, 0) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.compressorStarts = onset.shareOfRun() < level;
      health.rotorLocks = true;
    }
  },
  /** Supply too low. */
  LOW_VOLTAGE(0.88, 0.84, 0.8) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.voltage = level;
    }
  },
  /** Motor that draws too much. */
  HIGH_CURRENT(1.2, 1.4, 1.7) {
    @Override
    void bear(Health health, double level, Onset onset) {
      health.motorLoad = level;
    }
  };

  private final double mild;
  private final double moderate;
  private final double severe;

  Fault(double mild, double moderate, double severe) {
    this.mild = mild;
    this.moderate = moderate;
    this.severe = severe;
  }

  /** When a fault began and how far the run has come. */
  record Onset(double sinceS, double shareOfRun) {}

  abstract void bear(Health health, double level, Onset onset);

  double level(Severity severity) {
    return switch (severity) {
      case MILD -> mild;
      case MODERATE -> moderate;
      case SEVERE -> severe;
    };
  }
}
