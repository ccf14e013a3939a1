package heatwake.dashboard.window;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.dashboard.present.Tile;
import heatwake.dashboard.present.Tiles;
import heatwake.dashboard.present.Tone;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TileRowTest {
  private static Tile flow(String unit) {
    return new Tile("Heater flow", "23.7", unit, "± 0.9, steady", Tone.PLAIN);
  }

  private static List<TileView> seen(String unit, int width) {
    TileRow row = new TileRow();
    row.show(
        new Tiles(
            new Tile("Run over", "14 h", "", "recorded", Tone.PLAIN),
            Optional.empty(),
            Collections.nCopies(12, flow(unit))));
    row.setSize(width, TileRow.HEIGHT);
    row.doLayout();
    return Arrays.stream(row.getComponents())
        .skip(1)
        .map(TileView.class::cast)
        .filter(tile -> tile.getWidth() > 0)
        .toList();
  }

  @Test
  void asManyTilesAsShowTheirUnitsInFull() {
    for (int width = 600; width < 2000; width += 37) {
      assertThat(seen("gal/min and more", width))
          .isNotEmpty()
          .allSatisfy(
              tile -> assertThat(tile.getWidth()).isGreaterThanOrEqualTo(tile.leastWidth()));
    }
  }

  @Test
  void shortUnitsLeaveRoomForMore() {
    assertThat(seen("K", 1260)).hasSizeGreaterThan(seen("gal/min and more", 1260).size());
  }
}
