package heatwake.dashboard.demo.plant;

import heatwake.dashboard.demo.plant.air.Climate;
import heatwake.dashboard.demo.plant.machine.HeaterDesign;
import heatwake.dashboard.demo.plant.water.Basin;
import heatwake.dashboard.demo.plant.water.Circuit;
import java.util.List;

/**
 * A site as built and as it is run.
 *
 * @param climate weather of the days
 * @param altitudeM height above sea level
 * @param basin pool
 * @param circuit pump, filter, bypass
 * @param heater heater
 * @param setpointC set temperature
 * @param pumpSpells when the timer runs the pump
 * @param heaterSpells when the heater's own switch is on
 * @param startHour local solar hour at the start of the run
 * @param runS length of the run
 * @param meteredPumpW what the pump draws by way of the heater's meter; 0 where it has its own
 */
public record SiteDesign(
    Climate climate,
    double altitudeM,
    Basin basin,
    Circuit circuit,
    HeaterDesign heater,
    double setpointC,
    List<Spell> pumpSpells,
    List<Spell> heaterSpells,
    double startHour,
    double runS,
    double meteredPumpW) {

  /** A stretch of the run, in seconds from its start. */
  public record Spell(double fromS, double toS) {
    boolean holds(double timeS) {
      return timeS >= fromS && timeS < toS;
    }
  }

  public SiteDesign {
    pumpSpells = List.copyOf(pumpSpells);
    heaterSpells = List.copyOf(heaterSpells);
  }

  /** The same site in other weather. */
  public SiteDesign in(Climate other) {
    return new SiteDesign(
        other,
        altitudeM,
        basin,
        circuit,
        heater,
        setpointC,
        pumpSpells,
        heaterSpells,
        startHour,
        runS,
        meteredPumpW);
  }

  /** The same site with another pool. */
  public SiteDesign with(Basin other) {
    return new SiteDesign(
        climate,
        altitudeM,
        other,
        circuit,
        heater,
        setpointC,
        pumpSpells,
        heaterSpells,
        startHour,
        runS,
        meteredPumpW);
  }

  /** The same site with the pump timer set otherwise. */
  public SiteDesign pumped(List<Spell> spells) {
    return new SiteDesign(
        climate,
        altitudeM,
        basin,
        circuit,
        heater,
        setpointC,
        spells,
        heaterSpells,
        startHour,
        runS,
        meteredPumpW);
  }

  /** The same site watched for another time. */
  public SiteDesign lasting(double seconds) {
    return new SiteDesign(
        climate,
        altitudeM,
        basin,
        circuit,
        heater,
        setpointC,
        pumpSpells,
        heaterSpells,
        startHour,
        seconds,
        meteredPumpW);
  }

  static boolean within(List<Spell> spells, double timeS) {
    for (Spell spell : spells) {
      if (spell.holds(timeS)) {
        return true;
      }
    }
    return false;
  }
}
