package heatwake.dashboard.present;

import heatwake.analysis.phase.Phase;
import java.util.List;
import java.util.Optional;

/**
 * The figures that stand largest on the screen.
 *
 * @param lead what the heater is doing, or what became of the run
 * @param phase the phase whose colour the lead has; empty for a run that is over
 * @param figures the figures that decide most first
 */
public record Tiles(Tile lead, Optional<Phase> phase, List<Tile> figures) {
  public Tiles {
    figures = List.copyOf(figures);
  }
}
