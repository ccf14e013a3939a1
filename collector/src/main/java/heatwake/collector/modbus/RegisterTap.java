package heatwake.collector.modbus;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.probe.ProbeConversion;
import heatwake.collector.rig.ProbeSpec;
import heatwake.collector.rig.ProbeSpec.Address.Register;

/** One probe's place in the registers of a unit. */
record RegisterTap(
    Channel channel, Register register, double intervalS, ProbeConversion conversion) {
  private static final double DEFAULT_INTERVAL_S = 1;

  static RegisterTap of(ProbeSpec probe, Register register) {
    return new RegisterTap(
        probe.channel(),
        register,
        probe.intervalS().orElse(DEFAULT_INTERVAL_S),
        ProbeConversion.of(probe));
  }

  /** The register after its last. */
  int end() {
    return register.number() + register.type().words();
  }
}
