package heatwake.dashboard.demo.plant;

import heatwake.dashboard.demo.plant.air.Wander;
import heatwake.dashboard.demo.plant.air.Weather;
import heatwake.dashboard.demo.plant.fault.Ailment;
import heatwake.dashboard.demo.plant.fault.Health;
import heatwake.dashboard.demo.plant.machine.Controller;
import heatwake.dashboard.demo.plant.machine.HeatPump;
import heatwake.dashboard.demo.plant.machine.Supply;
import heatwake.dashboard.demo.plant.water.Hydraulics;
import heatwake.dashboard.demo.plant.water.PoolBody;
import heatwake.dashboard.demo.plant.water.PoolWater;
import java.util.List;
import java.util.SplittableRandom;

/** A simulated site, moved on second by second. The same seed gives the same course. */
public final class Plant {
  private static final double SWITCH_CLOSES = 0.3;
  private static final double SWITCH_OPENS = 0.22;
  private static final double INLET_COOLS_S = 7200;
  private static final double OUTLET_COOLS_S = 4300;
  private static final double FLOWING = 0.03;

  private final SiteDesign design;
  private final List<Ailment> ailments;
  private final Weather weather;
  private final Hydraulics hydraulics;
  private final PoolBody pool;
  private final HeatPump heatPump;
  private final Controller controller;
  private final Supply supply;
  private final Wander turbulence;
  private final Wander stratification;

  private double timeS;
  private boolean pumpOn;
  private boolean flowSwitch;
  private double waterInC;
  private double waterOutC;
  private double returnC;
  private double heatW;
  private double energyJ;
  private double heaterFlowM3PerS;
  private double totalFlowM3PerS;
  private double poolReadingC;
  private boolean fanRuns;

  /** Makes a heat pump that stands in the air of the first moment. */
  @FunctionalInterface
  public interface Builder {
    HeatPump build(SiteDesign design, double airC, double humidityRatio);
  }

  public Plant(SiteDesign design, List<Ailment> ailments, Builder builder, long seed) {
    this.design = design;
    this.ailments = List.copyOf(ailments);
    SplittableRandom random = new SplittableRandom(seed);
    this.weather = new Weather(design.climate(), design.altitudeM(), random.split());
    this.hydraulics = new Hydraulics(design.circuit());
    this.pool = new PoolBody(design.basin());
    weather.step(1, design.startHour());
    this.heatPump = builder.build(design, weather.airC(), weather.humidityRatio());
    this.controller = new Controller(design.heater(), design.setpointC());
    this.supply = new Supply(design.heater(), random.split());
    this.turbulence = new Wander(0.004, 8, random.split());
    this.stratification = new Wander(0.03, 1800, random.split());
    this.waterInC = pool.waterC() + 0.4 * (weather.airC() - pool.waterC());
    this.waterOutC = pool.waterC() + 0.6 * (weather.airC() - pool.waterC());
    this.returnC = waterOutC;
    this.energyJ = 1234.5 * 3.6e6;
  }

  /** Moves on. */
  public void step(double dtS) {
    timeS += dtS;
    Health health = new Health();
    for (Ailment ailment : ailments) {
      ailment.bear(health, timeS, design.runS());
    }
    weather.step(dtS, (design.startHour() + timeS / 3600) % 24);
    moveWater(dtS, health);
    HeatPump.Orders orders = controller.orders(health);
    fanRuns = orders.fan();
    heatPump.step(
        dtS,
        orders,
        new HeatPump.Surroundings(
            heaterFlowM3PerS,
            waterInC,
            weather.airC(),
            weather.humidityRatio(),
            weather.pressurePa()),
        health);
    warmWater(dtS);
    controller.step(
        dtS,
        new Controller.Sight(
            SiteDesign.within(design.heaterSpells(), timeS),
            flowSwitch,
            waterInC,
            waterOutC - waterInC,
            heatPump.condensingC(),
            heatPump.evaporatingC(),
            heatPump.iceKg(),
            weather.airC(),
            heatPump.dischargeC()),
        health);
    supply.step(
        dtS,
        heatPump.compressorW(),
        orders,
        controller.hums(health),
        design.heater().compressor().inverter(),
        pumpOn ? design.meteredPumpW() : 0,
        health);
    energyJ += supply.powerW() * dtS;
    pool.step(dtS, heatW, 1, weather);
    poolReadingC = pool.waterC() + stratification.step(dtS) * (pumpOn ? 0.3 : 1);
  }

  private void moveWater(double dtS, Health health) {
    pumpOn = SiteDesign.within(design.pumpSpells(), timeS);
    hydraulics.step(
        dtS,
        pumpOn ? 1 : 0,
        new Hydraulics.Hindrance(
            health.strainer, health.filter, 1, health.bypassOpening, health.pumpHead));
    double restless = 1 + turbulence.step(dtS);
    heaterFlowM3PerS = hydraulics.heaterM3PerS() * restless;
    totalFlowM3PerS = hydraulics.totalM3PerS() * restless;
    double designFlow = design.heater().waterM3PerS();
    double threshold = (flowSwitch ? SWITCH_OPENS : SWITCH_CLOSES) * designFlow;
    flowSwitch = heaterFlowM3PerS > threshold || (health.flowSwitchStuck && pumpOn);
  }

  private void warmWater(double dtS) {
    double hold = design.circuit().pipeM3();
    if (heaterFlowM3PerS > FLOWING * design.heater().waterM3PerS()) {
      double exchange = Math.min(0.5, totalFlowM3PerS * dtS / hold);
      waterInC += (pool.waterC() - waterInC) * exchange;
      double stream = heaterFlowM3PerS * PoolWater.density(waterInC) * PoolWater.heat(waterInC);
      double held = 0.4 * hold * PoolWater.density(waterInC) * PoolWater.heat(waterInC);
      waterOutC +=
          (heatPump.heatW() + stream * (waterInC - waterOutC)) * Math.min(dtS / held, 0.5 / stream);
      double middle = PoolWater.heat((waterInC + waterOutC) / 2);
      heatW = heaterFlowM3PerS * PoolWater.density(waterInC) * middle * (waterOutC - waterInC);
      double share = heaterFlowM3PerS / totalFlowM3PerS;
      double mixed = waterInC + share * (waterOutC - waterInC);
      returnC += (mixed - returnC) * exchange;
    } else {
      heatW = 0;
      double held = 0.4 * hold * PoolWater.density(waterInC) * PoolWater.heat(waterInC);
      waterOutC += heatPump.heatW() * dtS / held;
      waterInC += (weather.airC() - waterInC) * dtS / INLET_COOLS_S;
      waterOutC += (weather.airC() - waterOutC) * dtS / OUTLET_COOLS_S;
      returnC += (weather.airC() - returnC) * dtS / OUTLET_COOLS_S;
    }
  }

  /** Seconds since the start of the run. */
  public double timeS() {
    return timeS;
  }

  public SiteDesign design() {
    return design;
  }

  public Weather weather() {
    return weather;
  }

  public HeatPump heatPump() {
    return heatPump;
  }

  public Controller controller() {
    return controller;
  }

  public Supply supply() {
    return supply;
  }

  public Hydraulics hydraulics() {
    return hydraulics;
  }

  public boolean pumpOn() {
    return pumpOn;
  }

  public boolean flowSwitch() {
    return flowSwitch;
  }

  /** Whether the compressor really turns. */
  public boolean compressorRuns() {
    return heatPump.compressorW() > 0;
  }

  public boolean fanRuns() {
    return fanRuns;
  }

  public double waterInC() {
    return waterInC;
  }

  public double waterOutC() {
    return waterOutC;
  }

  public double returnC() {
    return returnC;
  }

  /** Mean of the pool. */
  public double poolC() {
    return pool.waterC();
  }

  /** The pool where the probe hangs. */
  public double poolReadingC() {
    return poolReadingC;
  }

  /** Loss of the pool. */
  public double poolLossW() {
    return pool.lossW();
  }

  /** Heat that the passing water gains between the two probes. */
  public double heatW() {
    return heatW;
  }

  public double heaterFlowM3PerS() {
    return heaterFlowM3PerS;
  }

  public double totalFlowM3PerS() {
    return totalFlowM3PerS;
  }

  /** Reading of a kWh meter on the heater. */
  public double energyJ() {
    return energyJ;
  }
}
