package heatwake.dashboard.score;

import heatwake.dashboard.demo.plant.air.MoistAir;
import heatwake.dashboard.demo.plant.fault.Health;
import heatwake.dashboard.demo.plant.machine.Fluid;
import heatwake.dashboard.demo.plant.machine.HeatPump;
import heatwake.dashboard.demo.plant.machine.HeaterDesign;

/**
 * A heat pump built the other way round: heat by a capacity map over wet bulb and water, power by a
 * share of Carnot's figure, temperatures by approaches that grow with load, and second-order
 * transients with a hunting valve. It shares the refrigerants' pressures with the seen family, and
 * nothing else. Used for the final check only.
 */
final class MappedHeatPump implements HeatPump {
  /**
   * What makes this machine differ from its like.
   *
   * @param heatPerK gain of heat per kelvin of wet bulb, a share
   * @param carnot share of Carnot's figure
   * @param airApproachK evaporating below air at full load in humid air
   * @param waterApproachK condensing above leaving water at full load
   * @param firstLagS first lag of heat after a start
   * @param secondLagS second one
   * @param huntingK swing of the superheat
   */
  record Temper(
      double heatPerK,
      double carnot,
      double airApproachK,
      double waterApproachK,
      double firstLagS,
      double secondLagS,
      double huntingK) {}

  private static final double HUNTING_PERIOD_S = 140;
  private static final double ICE_HEAT = 334e3;

  /** Heat lost for each share of the charge that is missing beyond its reserve. */
  private static final double SHORT_OF_HEAT = 1.25;

  private static final double LEAST_SHARE = 0.1;

  /** Superheated gas stays this far below the entering air. */
  private static final double LEAST_GAS_K = 0.5;

  private final HeaterDesign design;
  private final Temper temper;
  private double timeS;
  private double first;
  private double second;
  private double evaporatingC;
  private double condensingC;
  private double dischargeC;
  private double liquidC;
  private double suctionC;
  private double heatW;
  private double compressorW;
  private double airInC;
  private double airInRatio;
  private double airOutC;
  private double iceKg;
  private double trappedPa;

  MappedHeatPump(HeaterDesign design, Temper temper, double airC, double humidityRatio) {
    this.design = design;
    this.temper = temper;
    evaporatingC = airC;
    condensingC = airC;
    dischargeC = airC;
    liquidC = airC;
    suctionC = airC;
    airInC = airC;
    airOutC = airC;
    airInRatio = humidityRatio;
  }

  @Override
  public void step(double dtS, Orders orders, Surroundings around, Health health) {
    timeS += dtS;
    trappedPa = health.trappedAirPa;
    if (orders.compressor() && orders.defrost()) {
      melt(dtS, around);
    } else if (orders.compressor()) {
      run(dtS, orders.speed(), around, health);
    } else {
      rest(dtS, orders.fan(), around);
    }
  }

  private void run(double dtS, double speed, Surroundings around, Health health) {
    first += (1 - first) * dtS / temper.firstLagS();
    second += (first - second) * dtS / temper.secondLagS();
    airInC +=
        (around.airC() - health.recirculation * (around.airC() - airOutC) - airInC) * dtS / 20;
    airInRatio = around.humidityRatio();
    double short_ = Math.max(0, 1 - health.charge - 0.04);
    double over = Math.max(0, health.charge - 1);
    double choke = 1 + 1.3 * Math.pow(iceKg / design.coil().iceKg(), 1.5);
    double air = health.airFlow * Math.sqrt(health.coilTransfer) / choke;
    double wetBulbK = wetBulb(airInC, airInRatio, around.pressurePa()) - 24.3;
    double conditions =
        Math.max(0.2, 1 + temper.heatPerK() * wetBulbK - 0.005 * (around.waterInC() - 27));
    double hindered =
        Math.pow(air, 0.3) * (1 - SHORT_OF_HEAT * short_) * (1 - 0.95 * health.valveLeak);
    double fullW = design.ratedHeatW() * conditions * Math.max(0.1, hindered);
    double load = speed * fullW / design.ratedHeatW();
    double flow = Math.max(0.05, around.waterM3PerS() / design.waterM3PerS());
    double stream = around.waterM3PerS() * 4.17e6;
    double leavingC = around.waterInC() + (stream > 0 ? heatW / stream : 30);
    double dryness = 1 + 0.012 * Math.max(0, 24 - wetBulbK - 24.3);
    double fedC = airInC - temper.airApproachK() * dryness * load * Math.pow(air, -0.85);
    double wantedTe = fedC - drawnDownK(fedC, 1 - SHORT_OF_HEAT * short_);
    double wantedTc =
        leavingC
            + temper.waterApproachK()
                * load
                / health.condenserTransfer
                * Math.pow(flow, -0.35)
                * (1 + 1.5 * over);
    evaporatingC += (wantedTe - evaporatingC) * dtS / 35;
    condensingC += (wantedTc - condensingC) * dtS / 50;
    double lift = Math.max(6, condensingC - evaporatingC);
    double cop = temper.carnot() * (condensingC + 273.15) / lift;
    double steadyW = speed * fullW / Math.max(1.2, cop) / (1 - 0.6 * health.valveLeak);
    double trappedShare = trappedPa / design.fluid().bubblePa(condensingC);
    compressorW = steadyW * (0.5 + 0.5 * second) * health.motorLoad * (1 + 0.9 * trappedShare);
    double idleW = 0.4 * speed * design.ratedHeatW() / 6;
    compressorW = Math.max(compressorW, idleW);
    heatW = stream > 0 ? speed * fullW * second : 0;
    if (stream <= 0) {
      condensingC += 0.25 * dtS;
    }
    double superheat =
        design.coil().superheatK()
            + 45 * short_
            + temper.huntingK() * Math.sin(2 * Math.PI * timeS / HUNTING_PERIOD_S);
    double subcooling = Math.max(0, design.condenser().subcoolingK() - 38 * short_ + 24 * over);
    // Gas in a coil gets no warmer than the air that warms it.
    double gasC = Math.min(evaporatingC + dewAboveMean() + superheat, airInC - LEAST_GAS_K);
    suctionC += (gasC - suctionC) * dtS / 12;
    // Water cools nothing below itself, however much liquid stands in the condenser.
    double coldestC = Math.max(condensingC - subcooling, around.waterInC());
    liquidC += (coldestC - liquidC) * dtS / 25;
    double hotC = condensingC + 8 + 0.45 * lift + superheat;
    dischargeC += (hotC - dischargeC) * dtS / 120;
    airOutC += (airInC - 0.32 * load / air * 14 - airOutC) * dtS / 15;
    frost(dtS, load, around);
  }

  /**
   * How far a compressor of fixed displacement draws down the coil that gets only a share of its
   * refrigerant: until the gas is so much thinner, in proportion to its pressure.
   */
  private double drawnDownK(double fedC, double share) {
    Fluid fluid = design.fluid();
    double perK = Math.log(fluid.dewPa(fedC + 1) / fluid.dewPa(fedC - 1)) / 2;
    return -Math.log(Math.max(LEAST_SHARE, share)) / perK;
  }

  private double dewAboveMean() {
    Fluid fluid = design.fluid();
    double slope = (fluid.dewPa(evaporatingC + 1) - fluid.dewPa(evaporatingC - 1)) / 2;
    return 0.4 * (fluid.bubblePa(evaporatingC) - fluid.dewPa(evaporatingC)) / slope;
  }

  private void frost(double dtS, double load, Surroundings around) {
    double surfaceC = evaporatingC + 3;
    if (surfaceC < 0) {
      double at = MoistAir.humidityRatio(MoistAir.saturationPa(surfaceC), around.pressurePa());
      double excess = Math.max(0, around.humidityRatio() - at);
      iceKg += 0.4 * load * design.coil().airKgPerS() * excess * dtS;
    }
  }

  private void melt(double dtS, Surroundings around) {
    first = 0.4;
    second = 0.3;
    heatW = around.waterM3PerS() > 0 ? -0.4 * design.ratedHeatW() : 0;
    compressorW = design.ratedHeatW() / 13;
    iceKg = Math.max(0, iceKg - 0.35 * design.ratedHeatW() / ICE_HEAT * dtS);
    condensingC += ((iceKg > 0 ? 5 : 24) - condensingC) * dtS / 20;
    evaporatingC += (around.waterInC() - 24 - evaporatingC) * dtS / 20;
    suctionC += (evaporatingC + 2 - suctionC) * dtS / 20;
  }

  private void rest(double dtS, boolean fan, Surroundings around) {
    compressorW = 0;
    first = Math.max(0, first - dtS / 60);
    second = 0;
    double meets = design.sequence().equaliseS();
    // What the condenser still holds runs on into the water.
    heatW = around.waterM3PerS() > 0 ? heatW * (1 - dtS / 25) : 0;
    if (fan && around.airC() > 0) {
      iceKg = Math.max(0, iceKg - around.airC() * 1.2e-2 * design.ratedHeatW() / ICE_HEAT * dtS);
    }
    condensingC += (evaporatingC - condensingC) * dtS / meets;
    double towards = iceKg > 0 ? Math.min(0, around.airC()) : around.airC();
    evaporatingC += (towards - evaporatingC) * dtS / 420;
    evaporatingC += 0.4 * Math.max(0, condensingC - evaporatingC) * dtS / meets;
    dischargeC += (around.airC() - dischargeC) * dtS / 2400;
    liquidC += (around.airC() - liquidC) * dtS / 700;
    suctionC += (around.airC() - suctionC) * dtS / 700;
    airInC = around.airC();
    airInRatio = around.humidityRatio();
    airOutC += (around.airC() - airOutC) * dtS / 60;
  }

  /** Wet bulb by Stull, J. Appl. Meteor. Climatol. 50 (2011) 2267, from memory. */
  private static double wetBulb(double airC, double ratio, double pressurePa) {
    double percent =
        Math.min(99, 100 * MoistAir.vapourPa(ratio, pressurePa) / MoistAir.saturationPa(airC));
    return airC * Math.atan(0.151977 * Math.sqrt(percent + 8.313659))
        + Math.atan(airC + percent)
        - Math.atan(percent - 1.676331)
        + 0.00391838 * Math.pow(percent, 1.5) * Math.atan(0.023101 * percent)
        - 4.686035;
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
    Fluid fluid = design.fluid();
    double saturated = Math.sqrt(fluid.bubblePa(condensingC) * fluid.dewPa(condensingC));
    return saturated + trappedPa * (condensingC + 273.15) / 293.15;
  }

  @Override
  public double suctionPa() {
    Fluid fluid = design.fluid();
    double dew = fluid.dewPa(evaporatingC);
    double saturated = dew + 0.4 * (fluid.bubblePa(evaporatingC) - dew);
    return compressorW > 0 ? saturated : Math.min(dischargePa(), saturated + trappedPa * 0.9);
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
    return airInC;
  }

  @Override
  public double airInHumidityRatio() {
    return airInRatio;
  }

  @Override
  public double airOutC() {
    return airOutC;
  }

  @Override
  public double iceKg() {
    return iceKg;
  }
}
