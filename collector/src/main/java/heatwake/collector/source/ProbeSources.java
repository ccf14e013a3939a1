package heatwake.collector.source;

import heatwake.collector.mistake.SettingException;
import heatwake.collector.modbus.ModbusRtuSource;
import heatwake.collector.mqtt.MqttSources;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.rig.ProbeSpec;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.SourceSpec;
import heatwake.collector.serial.PortFinder;
import heatwake.collector.serial.SerialSource;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;

/** Makes the sources that a rig names. A new kind of source has its one line here. */
public final class ProbeSources {
  private ProbeSources() {}

  /**
   * The sources of a rig, not yet started, in the order of the file.
   *
   * @throws heatwake.collector.mistake.MistakeException if one cannot work as stated
   */
  public static List<ProbeSource> of(RigFile rig) {
    return of(rig, System::getenv);
  }

  /**
   * Refuses rigs that are to be recorded together but share a serial port.
   *
   * @throws heatwake.collector.mistake.MistakeException naming both sources
   */
  public static void requirePortsApart(Collection<RigFile> rigs) {
    PortsApart.require(rigs, PortFinder.ofThisMachine());
  }

  /**
   * The names of all sessions that the sources of rigs have at brokers.
   *
   * @throws heatwake.collector.mistake.MistakeException naming both sources, if two rigs that are
   *     to be recorded together share one
   */
  public static Set<String> sessions(Collection<RigFile> rigs) {
    return SessionsApart.all(rigs);
  }

  /** As {@link #of(RigFile)}, with environment variables looked up elsewhere. */
  public static List<ProbeSource> of(RigFile rig, UnaryOperator<String> environment) {
    return rig.sources().stream().map(source -> placed(rig, source, environment)).toList();
  }

  /** Says of a setting that will not do where it stands. */
  private static ProbeSource placed(
      RigFile rig, SourceSpec source, UnaryOperator<String> environment) {
    try {
      return of(rig, source, environment);
    } catch (SettingException bad) {
      throw rig.mistake(source, bad.key(), bad.getMessage());
    }
  }

  private static ProbeSource of(RigFile rig, SourceSpec source, UnaryOperator<String> environment) {
    List<ProbeSpec> probes =
        rig.probes().stream()
            .filter(probe -> probe.source().filter(source.name()::equals).isPresent())
            .toList();
    if (source instanceof SourceSpec.Mqtt mqtt) {
      return MqttSources.of(mqtt, probes, rig.rig().site().name(), environment);
    }
    if (source instanceof SourceSpec.Serial serial) {
      return new SerialSource(serial, probes, PortFinder.ofThisMachine());
    }
    return new ModbusRtuSource((SourceSpec.ModbusRtu) source, probes, PortFinder.ofThisMachine());
  }
}
