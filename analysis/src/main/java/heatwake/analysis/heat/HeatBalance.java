package heatwake.analysis.heat;

import heatwake.analysis.electric.ElectricStream;
import heatwake.analysis.electric.ElectricSum;
import heatwake.analysis.heat.Windows.Window;
import heatwake.analysis.uncertainty.Estimate;
import java.util.List;
import java.util.Optional;

/**
 * Heat and electric energy over windows of time.
 *
 * @param deliveredJ heat over the instants whose heat is known
 * @param electricJ electric energy over the instants whose power is known
 * @param cop heat over energy, both over the instants at which both are known: a ratio of integrals
 * @param heatUnknownS time within the windows whose heat is not known
 * @param electricUnknownS time within the windows whose power is not known
 * @param seconds length of the windows
 */
public record HeatBalance(
    Optional<Estimate> deliveredJ,
    Optional<Estimate> electricJ,
    Optional<Estimate> cop,
    double heatUnknownS,
    double electricUnknownS,
    double seconds) {
  /** Heat over less than this part of the windows is no total; ours. */
  private static final double LEAST_KNOWN = 0.5;

  /** Balance over windows; either side may be missing. */
  public static HeatBalance of(
      Optional<HeatStream> heat,
      Optional<ElectricStream> electric,
      List<Window> windows,
      double stepS) {
    Optional<HeatSum> allHeat = heat.map(HeatSum::new);
    Optional<ElectricSum> allElectric = electric.map(ElectricSum::new);
    Optional<HeatSum> bothHeat = heat.map(HeatSum::new);
    Optional<ElectricSum> bothElectric = electric.map(ElectricSum::new);
    int instants = 0;
    for (Window window : windows) {
      for (int i = window.from(); i < window.to(); i++) {
        instants++;
        boolean heatKnown = allHeat.isPresent() && allHeat.get().add(i);
        boolean electricKnown = allElectric.isPresent() && allElectric.get().add(i);
        if (heatKnown && electricKnown) {
          bothHeat.get().add(i);
          bothElectric.get().add(i);
        }
      }
    }
    double seconds = instants * stepS;
    return new HeatBalance(
        allHeat.filter(sum -> !sum.isEmpty()).map(HeatSum::energyJ),
        allElectric.filter(sum -> !sum.isEmpty()).map(ElectricSum::energyJ),
        cop(bothHeat, bothElectric),
        seconds - allHeat.map(HeatSum::seconds).orElse(0.0),
        seconds - allElectric.map(ElectricSum::seconds).orElse(0.0),
        seconds);
  }

  /** Share of the windows whose heat is known, 0 to 1; 1 where there are no windows. */
  public double heatKnown() {
    return seconds > 0 ? 1 - heatUnknownS / seconds : 1;
  }

  /** Share of the windows whose power is known, 0 to 1; 1 where there are no windows. */
  public double electricKnown() {
    return seconds > 0 ? 1 - electricUnknownS / seconds : 1;
  }

  /** The same with time counted in of which nothing is known, s. */
  HeatBalance withUnseen(double unseenS) {
    return new HeatBalance(
        deliveredJ,
        electricJ,
        cop,
        heatUnknownS + unseenS,
        electricUnknownS + unseenS,
        seconds + unseenS);
  }

  /** Whether enough of the heat is known to speak of a total. */
  public boolean isTotal() {
    return heatKnown() >= LEAST_KNOWN;
  }

  private static Optional<Estimate> cop(Optional<HeatSum> heat, Optional<ElectricSum> electric) {
    if (heat.isEmpty() || electric.isEmpty() || heat.get().isEmpty()) {
      return Optional.empty();
    }
    Estimate energy = electric.get().energyJ();
    return energy.value() > 0
        ? Optional.of(heat.get().energyJ().dividedBy(energy))
        : Optional.empty();
  }
}
