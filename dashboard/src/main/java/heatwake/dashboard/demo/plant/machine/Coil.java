package heatwake.dashboard.demo.plant.machine;

import heatwake.dashboard.demo.plant.air.MoistAir;
import heatwake.dashboard.demo.plant.fault.Health;

/**
 * Heat from moist air to the refrigerant: a dry coil by temperature, a wet one by enthalpy
 * (Threlkeld's potential), whichever takes more. Ice grows where moisture meets a surface below
 * freezing, and chokes the air.
 */
final class Coil {
  /** What the coil did in a step. */
  record Exchange(double heatW, double airInC, double airInRatio, double airOutC) {}

  private final HeaterDesign.AirCoil design;
  private double iceKg;
  private double airOutC;
  private double outRatio;
  private boolean started;

  Coil(HeaterDesign.AirCoil design) {
    this.design = design;
  }

  double iceKg() {
    return iceKg;
  }

  /** Melts ice with an amount of heat. */
  void melt(double joule) {
    iceKg = Math.max(0, iceKg - Math.max(0, joule) / 334e3);
  }

  /** Air with the fan off: a breath of natural draught. */
  Exchange rest(double dtS, HeatPump.Surroundings around, double coilC) {
    started = false;
    airOutC = 0.8 * around.airC() + 0.2 * coilC;
    outRatio = around.humidityRatio();
    melt(around.airC() * design.finTransferWPerK() * 0.05 * dtS);
    return new Exchange(0, around.airC(), around.humidityRatio(), airOutC);
  }

  /** Air blown through a coil whose compressor rests: it thaws. */
  Exchange thaw(double dtS, HeatPump.Surroundings around, double coilC) {
    started = false;
    melt(around.airC() * design.finTransferWPerK() * 0.8 * dtS);
    airOutC += (0.5 * (around.airC() + coilC) - airOutC) * Math.min(1, dtS / 8);
    outRatio = around.humidityRatio();
    return new Exchange(0, around.airC(), around.humidityRatio(), airOutC);
  }

  Exchange blow(
      double dtS, HeatPump.Surroundings around, double refrigerantC, double wetted, Health health) {
    if (!started) {
      airOutC = around.airC();
      outRatio = around.humidityRatio();
      started = true;
    }
    double again = health.recirculation;
    double inC = (1 - again) * around.airC() + again * airOutC;
    double inRatio = (1 - again) * around.humidityRatio() + again * outRatio;
    double choke = iceKg / design.iceKg();
    double air = design.airKgPerS() * health.airFlow / (1 + choke * choke);
    double airSide = Math.pow(air / design.airKgPerS(), 0.5);
    double fin =
        design.finTransferWPerK() * health.coilTransfer * wetted * airSide / (1 + 0.5 * choke);
    double tube = design.tubeTransferWPerK() * wetted;
    double transfer = 1 / (1 / fin + 1 / tube);
    double dryShare = 1 - Math.exp(-transfer / (air * MoistAir.DRY_HEAT));
    double dryW = dryShare * air * MoistAir.DRY_HEAT * (inC - refrigerantC);
    double inEnthalpy = MoistAir.enthalpy(inC, inRatio);
    double atRefrigerant = MoistAir.saturatedEnthalpy(refrigerantC, around.pressurePa());
    double slope =
        (MoistAir.saturatedEnthalpy(refrigerantC + 4, around.pressurePa()) - atRefrigerant) / 4;
    double wetTransfer = 1 / (MoistAir.DRY_HEAT / fin + slope / tube);
    double wetShare = 1 - Math.exp(-wetTransfer / air);
    double wetW = wetShare * air * (inEnthalpy - atRefrigerant);
    double heatW = Math.max(dryW, wetW);
    double surfaceC = refrigerantC + heatW / tube;
    double lostRatio = 0;
    double outC = inC - dryShare * (inC - refrigerantC);
    if (wetW > dryW) {
      double surfaceRatio =
          MoistAir.humidityRatio(MoistAir.saturationPa(surfaceC), around.pressurePa());
      double contact = 1 - Math.exp(-fin / MoistAir.DRY_HEAT / air);
      outC = inC - contact * (inC - surfaceC);
      lostRatio = Math.max(0, contact * (inRatio - surfaceRatio));
      if (surfaceC < 0) {
        iceKg += lostRatio * air * dtS;
      }
    }
    if (surfaceC > 0.5) {
      melt(0.2 * fin * surfaceC * dtS);
    }
    double lag = Math.min(1, dtS / 8);
    airOutC += (outC - airOutC) * lag;
    outRatio += (inRatio - lostRatio - outRatio) * lag;
    return new Exchange(heatW, inC, inRatio, airOutC);
  }
}
