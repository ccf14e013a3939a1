package heatwake.dashboard.demo.plant.machine;

import heatwake.dashboard.demo.plant.fault.Health;
import heatwake.dashboard.demo.plant.water.PoolWater;

/**
 * A vapour-compression heat pump whose evaporating and condensing temperatures move towards the
 * balance of compressor, coil and condenser.
 */
public final class CycleHeatPump implements HeatPump {
  private static final double SHELL_LAG_S = 90;
  private static final double LINE_LAG_S = 15;
  private static final double MET_K = 1;
  private static final double SHELL_CONDUCTS = 0.003;
  private static final double COIL_RETURNS_S = 260;
  private static final double DEFROST_TURNS_S = 25;

  private final HeaterDesign design;
  private final Coil coil;
  private final double ratedWorkW;

  private double evaporatingC;
  private double condensingC;
  private double settled;
  private double heatW;
  private double compressorW;
  private double dischargePa;
  private double suctionPa;
  private double dischargeC;
  private double liquidC;
  private double suctionC;
  private Coil.Exchange air;

  /** A heater that has stood for long in air of a temperature. */
  public CycleHeatPump(HeaterDesign design, double airC, double humidityRatio) {
    this.design = design;
    this.coil = new Coil(design.coil());
    this.evaporatingC = airC;
    this.condensingC = airC;
    this.dischargeC = airC;
    this.liquidC = airC;
    this.suctionC = airC;
    this.ratedWorkW = design.ratedHeatW() / 6;
    this.air = new Coil.Exchange(0, airC, humidityRatio, airC);
  }

  @Override
  public void step(double dtS, Orders orders, Surroundings around, Health health) {
    if (orders.compressor() && orders.defrost()) {
      reverse(dtS, around);
    } else if (orders.compressor()) {
      run(dtS, orders.speed(), around, health);
    } else {
      rest(dtS, orders.fan(), around, health);
    }
    suctionPa = design.fluid().evaporatingPa(evaporatingC);
    double trapped = health.trappedAirPa * (condensingC + 273.15) / 293.15;
    dischargePa = design.fluid().condensingPa(condensingC) + trapped;
    if (!orders.compressor()) {
      // At rest the trapped air spreads over both sides as the pressures meet.
      suctionPa += trapped * (1 - settled);
    }
  }

  private void run(double dtS, double speed, Surroundings around, Health health) {
    settled += (1 - settled) * dtS / design.sequence().settleS();
    Charge charge = Charge.of(health.charge, design);
    double wetted = charge.wetted() * (0.4 + 0.6 * settled);
    air = coil.blow(dtS, around, evaporatingC, wetted, health);
    double dry = 1 - charge.wetted();
    double superheat =
        design.coil().superheatK() * (0.5 + 0.5 * settled)
            + Math.max(0, dry * 0.85 * (air.airInC() - evaporatingC - design.coil().superheatK()));
    double subcooling = charge.subcoolingK() * settled;
    RefrigerantState state =
        RefrigerantState.at(
            design.fluid(), evaporatingC, condensingC, superheat, Math.max(0, subcooling));
    double ratio = dischargePa > suctionPa ? dischargePa / suctionPa : 1;
    HeaterDesign.Compressor compressor = design.compressor();
    double massKgPerS =
        compressor.displacementM3PerS()
            * speed
            * state.suctionDensity()
            * CompressorCurve.filling(compressor, ratio)
            * (1 - health.valveLeak);
    double isentropic =
        design.fluid().isentropicWork(state.suctionPa(), 1 / state.suctionDensity(), ratio);
    double efficiency =
        CompressorCurve.efficiency(compressor, ratio) * (1 - 0.85 * health.valveLeak);
    double idleW = 0.35 * ratedWorkW * speed;
    compressorW = Math.max(massKgPerS * isentropic / efficiency, idleW) * health.motorLoad;
    double kept = CompressorCurve.KEPT / health.motorLoad;
    double work = massKgPerS > 0 ? kept * compressorW / massKgPerS : 0;
    double dischargeEnthalpy = state.suctionEnthalpy() + work;
    double rejectedW = massKgPerS * (dischargeEnthalpy - state.liquidEnthalpy());
    double boiledW = massKgPerS * (state.suctionEnthalpy() - state.liquidEnthalpy());
    double part = health.condenserTransfer * charge.condenserFree();
    heatW = condenserHeat(around, part);
    condensingC += (rejectedW - heatW) * dtS / design.condenser().heatJPerK();
    evaporatingC += (air.heatW() - boiledW) * dtS / design.coil().heatJPerK();
    double superheated = dischargeEnthalpy - design.fluid().vapourEnthalpy(condensingC);
    double hotC = condensingC + superheated / design.fluid().dischargeVapourHeat();
    dischargeC += (Math.max(hotC, condensingC) - dischargeC) * dtS / SHELL_LAG_S;
    double coldest = Math.min(state.liquidC(), condensingC);
    liquidC += (Math.max(coldest, around.waterInC()) - liquidC) * dtS / LINE_LAG_S;
    suctionC += (state.suctionC() - suctionC) * dtS / LINE_LAG_S;
  }

  private double condenserHeat(Surroundings around, double part) {
    double flow = around.waterM3PerS();
    double transfer =
        design.condenser().transferWPerK()
            * part
            * Math.pow(flow / design.waterM3PerS(), design.condenser().flowExponent());
    double stream = flow * PoolWater.density(around.waterInC()) * PoolWater.heat(around.waterInC());
    if (stream <= 0) {
      return 0;
    }
    // Gas colder than the water's wall does not condense; once the pressures have met there is
    // nothing left to condense, and what liquid gathers in the colder exchanger cannot get back:
    // then only the shell conducts.
    boolean pressed = compressorW > 0 || condensingC - evaporatingC > MET_K;
    double wetted = pressed && condensingC > around.waterInC() ? 1 : SHELL_CONDUCTS;
    return stream * (1 - Math.exp(-transfer * wetted / stream)) * (condensingC - around.waterInC());
  }

  private void rest(double dtS, boolean fan, Surroundings around, Health health) {
    compressorW = 0;
    settled = Math.max(0, settled - dtS / design.sequence().equaliseS());
    air = fan ? coil.thaw(dtS, around, evaporatingC) : coil.rest(dtS, around, evaporatingC);
    heatW = condenserHeat(around, health.condenserTransfer);
    double meeting = (condensingC - evaporatingC) / design.sequence().equaliseS();
    condensingC -= (meeting + heatW / design.condenser().heatJPerK()) * dtS;
    double returns = fan ? COIL_RETURNS_S / 4 : COIL_RETURNS_S;
    double towards = coil.iceKg() > 0 ? Math.min(0.5, around.airC()) : around.airC();
    evaporatingC += (0.5 * Math.max(0, meeting) + (towards - evaporatingC) / returns) * dtS;
    dischargeC += (around.airC() - dischargeC) * dtS / 1500;
    liquidC += (0.5 * (around.airC() + condensingC) - liquidC) * dtS / 400;
    suctionC += (around.airC() - suctionC) * dtS / 400;
  }

  private void reverse(double dtS, Surroundings around) {
    settled = 0.3;
    boolean icy = coil.iceKg() > 0;
    double coilTowards = icy ? 8 : 28;
    // The valve turns the circuit around: the water's exchanger becomes the cold side.
    condensingC += (coilTowards - condensingC) * dtS / DEFROST_TURNS_S;
    evaporatingC += (around.waterInC() - 27 - evaporatingC) * dtS / DEFROST_TURNS_S;
    compressorW = 0.5 * ratedWorkW;
    boolean flows = around.waterM3PerS() > 0.1 * design.waterM3PerS();
    heatW = flows ? -0.45 * design.ratedHeatW() : 0;
    coil.melt((0.45 * design.ratedHeatW() + 0.9 * compressorW) * 0.7 * dtS);
    air = coil.rest(dtS, around, coilTowards);
    dischargeC += (condensingC + 15 - dischargeC) * dtS / SHELL_LAG_S;
    liquidC += (5 - liquidC) * dtS / LINE_LAG_S;
    suctionC += (evaporatingC + 3 - suctionC) * dtS / LINE_LAG_S;
  }

  /**
   * What the amount of refrigerant does: too little uncovers the liquid line and starves the coil,
   * too much floods the condenser.
   */
  private record Charge(double wetted, double condenserFree, double subcoolingK) {
    static Charge of(double charge, HeaterDesign design) {
      double usual = design.condenser().subcoolingK();
      double off = charge - 1;
      if (off >= 0) {
        return new Charge(1, 1 / (1 + 1.6 * off), usual + 28 * off);
      }
      double subcooling = Math.max(0, usual + 45 * off);
      double starved = Math.max(0, -off - usual / 45 * 0.5);
      return new Charge(Math.max(0.12, 1 - 2.1 * starved), 1, subcooling);
    }
  }

  @Override
  public double heatW() {
    return heatW;
  }

  @Override
  public double compressorW() {
    return compressorW;
  }

  @Override
  public double dischargePa() {
    return dischargePa;
  }

  @Override
  public double suctionPa() {
    return suctionPa;
  }

  @Override
  public double dischargeC() {
    return dischargeC;
  }

  @Override
  public double liquidC() {
    return liquidC;
  }

  @Override
  public double suctionC() {
    return suctionC;
  }

  @Override
  public double evaporatingC() {
    return evaporatingC;
  }

  @Override
  public double condensingC() {
    return condensingC;
  }

  @Override
  public double airInC() {
    return air.airInC();
  }

  @Override
  public double airInHumidityRatio() {
    return air.airInRatio();
  }

  @Override
  public double airOutC() {
    return air.airOutC();
  }

  @Override
  public double iceKg() {
    return coil.iceKg();
  }
}
