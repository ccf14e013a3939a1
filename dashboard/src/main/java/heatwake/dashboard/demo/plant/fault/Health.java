package heatwake.dashboard.demo.plant.fault;

/**
 * The state of every part that can be ill, as multiples or shares of its healthy value. A healthy
 * site has the values given here.
 */
public final class Health {
  /** Loss of the strainer and suction line, a multiple. */
  public double strainer = 1;

  /** Loss of the filter, a multiple. */
  public double filter = 1;

  /** Opening of the bypass valve, a multiple of the right setting. */
  public double bypassOpening = 1;

  /** Head of the pump, a share; 0 when it has tripped. */
  public double pumpHead = 1;

  /** The flow switch reports flow whatever the water does. */
  public boolean flowSwitchStuck;

  /** Heat transfer of the condenser on the water side, a share. */
  public double condenserTransfer = 1;

  /** Air through the coil, a share. */
  public double airFlow = 1;

  /** Heat transfer of the coil's fins, a share. */
  public double coilTransfer = 1;

  /** Electric power of the fan, a share. */
  public double fanPower = 1;

  /** Part of the air leaving the coil that enters it again. */
  public double recirculation;

  /** Refrigerant in the circuit over the right charge. */
  public double charge = 1;

  /** Pressure of trapped air in the high side at 20 Cel, Pa. */
  public double trappedAirPa;

  /** Part of the compressor's flow that leaks back through its valves. */
  public double valveLeak;

  /** The controller melts ice off the coil when it should. */
  public boolean defrosts = true;

  /** Shift of the controller's idea of the water temperature, K. */
  public double controlShiftK;

  /** Part of the heater's own temperature rise that reaches the controller's sensor. */
  public double controlSeesRise;

  /**
   * Difference between the controller's stop and start temperatures, a multiple of the right one.
   */
  public double hysteresis = 1;

  /** Time the controller waits between stop and start, a multiple of the right one. */
  public double restartDelay = 1;

  /** The compressor starts when it is told to. */
  public boolean compressorStarts = true;

  /** The compressor hums with a locked rotor when told to start and it does not. */
  public boolean rotorLocks;

  /** Supply voltage, a share of the usual. */
  public double voltage = 1;

  /** Friction and leakage in the motor: current and power, a multiple. */
  public double motorLoad = 1;
}
