package heatwake.dashboard.demo.plant.machine;

/**
 * The corners of the cycle between two mean saturation temperatures. Pressures in Pa absolute,
 * enthalpies in J/kg.
 */
record RefrigerantState(
    double suctionPa,
    double dischargePa,
    double suctionC,
    double suctionDensity,
    double suctionEnthalpy,
    double liquidC,
    double liquidEnthalpy,
    double isentropicWork) {

  static RefrigerantState at(
      Fluid fluid, double evaporatingC, double condensingC, double superheatK, double subcoolingK) {
    double suctionPa = fluid.evaporatingPa(evaporatingC);
    double dischargePa = fluid.condensingPa(condensingC);
    double dewC = evaporatingC + fluid.dewAboveMeanK(evaporatingC);
    double density = fluid.vapourDensity(dewC) * (dewC + 273.15) / (dewC + superheatK + 273.15);
    double suctionEnthalpy = fluid.vapourEnthalpy(dewC) + fluid.suctionVapourHeat() * superheatK;
    double liquidC = condensingC - fluid.bubbleBelowMeanK(condensingC) - subcoolingK;
    double ratio = Math.max(1, dischargePa / suctionPa);
    return new RefrigerantState(
        suctionPa,
        dischargePa,
        dewC + superheatK,
        density,
        suctionEnthalpy,
        liquidC,
        fluid.liquidEnthalpy(liquidC),
        fluid.isentropicWork(suctionPa, 1 / density, ratio));
  }

  double pressureRatio() {
    return Math.max(1, dischargePa / suctionPa);
  }
}
