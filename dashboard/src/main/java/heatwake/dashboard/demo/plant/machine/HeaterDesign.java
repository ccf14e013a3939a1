package heatwake.dashboard.demo.plant.machine;

import heatwake.dashboard.demo.plant.air.MoistAir;
import heatwake.dashboard.demo.plant.water.PoolWater;

/**
 * A heater as built.
 *
 * @param fluid refrigerant
 * @param ratedHeatW heat it was designed for at 27 Cel air of 80 %, 27 Cel water
 * @param waterM3PerS water flow it was designed for
 * @param condenser heat transfer to the water
 * @param coil heat transfer from the air
 * @param compressor what it moves and how well
 * @param sequence what the controller does and when
 * @param electric how it draws on the supply
 */
public record HeaterDesign(
    Fluid fluid,
    double ratedHeatW,
    double waterM3PerS,
    Condenser condenser,
    AirCoil coil,
    Compressor compressor,
    Sequence sequence,
    Electric electric) {

  /** Air temperature of the design point, Cel. */
  public static final double DESIGN_AIR_C = 27;

  /** Relative humidity of the design point. */
  public static final double DESIGN_HUMIDITY = 0.8;

  /** Entering water of the design point, Cel. */
  public static final double DESIGN_WATER_C = 27;

  private static final double SEA_LEVEL_PA = 101_325;

  /**
   * Water side.
   *
   * @param transferWPerK heat transfer at the design flow
   * @param flowExponent how it grows with flow
   * @param heatJPerK heat it holds, refrigerant and metal
   * @param subcoolingK of the liquid with the right charge
   */
  public record Condenser(
      double transferWPerK, double flowExponent, double heatJPerK, double subcoolingK) {}

  /**
   * Air side.
   *
   * @param airKgPerS air with a clean coil
   * @param finTransferWPerK from air to fin
   * @param tubeTransferWPerK from fin to refrigerant
   * @param heatJPerK heat it holds
   * @param superheatK kept by the expansion valve
   * @param iceKg ice that halves the air flow
   */
  public record AirCoil(
      double airKgPerS,
      double finTransferWPerK,
      double tubeTransferWPerK,
      double heatJPerK,
      double superheatK,
      double iceKg) {}

  /**
   * Compressor.
   *
   * @param displacementM3PerS swept volume at full speed
   * @param clearance loss of volumetric efficiency per unit of pressure ratio above one
   * @param efficiency greatest isentropic efficiency, motor included
   * @param bestRatio pressure ratio at which it is reached
   * @param inverter whether its speed is controlled
   */
  public record Compressor(
      double displacementM3PerS,
      double clearance,
      double efficiency,
      double bestRatio,
      boolean inverter) {}

  /** How ice is melted off the coil. */
  public enum Defrost {
    /** The cycle is reversed and takes heat from the water. */
    REVERSED_CYCLE,
    /** The compressor rests and the fan blows. */
    AIR
  }

  /**
   * Times of the controller and of the refrigerant.
   *
   * @param fanDelayS from call to fan
   * @param compressorDelayS from fan to compressor
   * @param fanRunOnS fan after the compressor has stopped
   * @param restartDelayS least rest of the compressor
   * @param hysteresisK between stop and start
   * @param settleS how the refrigerant finds its place after a start
   * @param equaliseS how the pressures meet after a stop
   * @param defrost how it defrosts
   * @param defrostAfterS running time with a frozen coil before it does
   */
  public record Sequence(
      double fanDelayS,
      double compressorDelayS,
      double fanRunOnS,
      double restartDelayS,
      double hysteresisK,
      double settleS,
      double equaliseS,
      Defrost defrost,
      double defrostAfterS) {}

  /**
   * Electric side.
   *
   * @param nominalV line to line
   * @param phases 1 or 3
   * @param powerFactor of the running heater
   * @param fanW fan
   * @param standbyW controls at rest
   * @param crankcaseW heater of the resting compressor
   */
  public record Electric(
      double nominalV,
      int phases,
      double powerFactor,
      double fanW,
      double standbyW,
      double crankcaseW) {
    /** Line current of an active power at a voltage and power factor. */
    double current(double powerW, double voltageV, double factor) {
      return powerW / (voltageV * factor * (phases == 3 ? Math.sqrt(3) : 1));
    }
  }

  /**
   * What the designer chose.
   *
   * @param heatW heat at the design point
   * @param evaporatingC at the design point
   * @param condensingC at the design point
   * @param riseK temperature rise of the water at the design point
   * @param airKgPerSPerW air through the coil per watt of heat
   * @param superheatK at the suction
   * @param subcoolingK of the liquid
   */
  public record Choice(
      double heatW,
      double evaporatingC,
      double condensingC,
      double riseK,
      double airKgPerSPerW,
      double superheatK,
      double subcoolingK) {
    /** Usual choices for a heat output. */
    public static Choice usual(double heatW) {
      return new Choice(heatW, 12.5, 38.5, 2.6, 8.5e-5, 5.5, 4.5);
    }
  }

  /**
   * One piece off the line: no two are quite alike.
   *
   * @param displacement swept volume, a multiple
   * @param efficiency of the compressor, a multiple
   * @param transfer of both exchangers, a multiple
   */
  public HeaterDesign piece(double displacement, double efficiency, double transfer) {
    return new HeaterDesign(
        fluid,
        ratedHeatW,
        waterM3PerS,
        new Condenser(
            condenser.transferWPerK() * transfer,
            condenser.flowExponent(),
            condenser.heatJPerK(),
            condenser.subcoolingK()),
        new AirCoil(
            coil.airKgPerS(),
            coil.finTransferWPerK() * transfer,
            coil.tubeTransferWPerK() * transfer,
            coil.heatJPerK(),
            coil.superheatK(),
            coil.iceKg()),
        new Compressor(
            compressor.displacementM3PerS() * displacement,
            compressor.clearance(),
            compressor.efficiency() * efficiency,
            compressor.bestRatio(),
            compressor.inverter()),
        sequence,
        electric);
  }

  /** Sizes exchangers and compressor so that the choice is met at the design point. */
  public static HeaterDesign sized(
      Fluid fluid, Choice choice, Compressor like, Sequence sequence, Electric electric) {
    double te = choice.evaporatingC();
    double tc = choice.condensingC();
    RefrigerantState state =
        RefrigerantState.at(fluid, te, tc, choice.superheatK(), choice.subcoolingK());
    double work = state.isentropicWork() / CompressorCurve.efficiency(like, state.pressureRatio());
    double perKg = state.suctionEnthalpy() + CompressorCurve.KEPT * work - state.liquidEnthalpy();
    double massKgPerS = choice.heatW() / perKg;
    double displacement =
        massKgPerS / state.suctionDensity() / CompressorCurve.filling(like, state.pressureRatio());
    double flow =
        choice.heatW()
            / choice.riseK()
            / PoolWater.density(DESIGN_WATER_C)
            / PoolWater.heat(DESIGN_WATER_C);
    double stream = choice.heatW() / choice.riseK();
    double transfer = -stream * Math.log(1 - choice.riseK() / (tc - DESIGN_WATER_C));
    double fromAirW = massKgPerS * (state.suctionEnthalpy() - state.liquidEnthalpy());
    double air = choice.airKgPerSPerW() * choice.heatW();
    double moisture =
        MoistAir.humidityRatio(DESIGN_HUMIDITY * MoistAir.saturationPa(DESIGN_AIR_C), SEA_LEVEL_PA);
    double span =
        MoistAir.enthalpy(DESIGN_AIR_C, moisture) - MoistAir.saturatedEnthalpy(te, SEA_LEVEL_PA);
    double wetTransfer = -air * Math.log(1 - fromAirW / (air * span));
    double slope =
        (MoistAir.saturatedEnthalpy(te + 4, SEA_LEVEL_PA)
                - MoistAir.saturatedEnthalpy(te, SEA_LEVEL_PA))
            / 4;
    double finShare = 0.55;
    return new HeaterDesign(
        fluid,
        choice.heatW(),
        flow,
        new Condenser(transfer, 0.6, 2.6 * choice.heatW(), choice.subcoolingK()),
        new AirCoil(
            air,
            MoistAir.DRY_HEAT * wetTransfer / finShare,
            slope * wetTransfer / (1 - finShare),
            1.6 * choice.heatW(),
            choice.superheatK(),
            2.2e-4 * choice.heatW()),
        new Compressor(
            displacement, like.clearance(), like.efficiency(), like.bestRatio(), like.inverter()),
        sequence,
        electric);
  }
}
