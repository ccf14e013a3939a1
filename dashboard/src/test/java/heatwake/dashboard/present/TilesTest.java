package heatwake.dashboard.present;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.phase.Phase;
import heatwake.dashboard.example.InventedNight;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TilesTest {
  @Test
  void whileSteadyAFigureHasItsUncertainty() {
    Tiles tiles =
        LiveTiles.of(
            InventedNight.recording(),
            InventedNight.findings(),
            InventedNight.minute(639.5),
            UnitChoice.METRIC);
    assertThat(tile(tiles, "Heat")).isEqualTo(plain("Heat", "14.4", "kW", "± 0.7, steady"));
    assertThat(tile(tiles, "COP")).isEqualTo(plain("COP", "5.3", "", "± 0.3, steady"));
    assertThat(tile(tiles, "Rise")).isEqualTo(plain("Rise", "1.58", "K", "± 0.06, steady"));
  }

  @Test
  void whatTheHeaterDoesAndSinceWhenStandsFirst() {
    Tiles tiles =
        LiveTiles.of(
            InventedNight.recording(),
            InventedNight.findings(),
            InventedNight.minute(720),
            UnitChoice.METRIC);
    assertThat(tiles.phase()).contains(Phase.OFF);
    assertThat(tiles.lead()).isEqualTo(plain("Heater now", "Off", "", "for 30 min"));
  }

  @Test
  void aReadingThatIsOldIsMarkedWithItsAge() {
    Tiles tiles =
        LiveTiles.of(
            InventedNight.recording(),
            InventedNight.findings(),
            InventedNight.minute(725),
            UnitChoice.METRIC);
    Tile water = tile(tiles, "Water in");
    assertThat(water.tone()).isEqualTo(Tone.STALE);
    assertThat(water.foot()).isEqualTo("5 min 5 s old");
    assertThat(tile(tiles, "Heat").value()).isEqualTo("–");
  }

  @Test
  void aRunThatIsOverShowsWhatCameOfIt() {
    Tiles tiles = EndedTiles.of(InventedNight.findings(), UnitChoice.METRIC);
    assertThat(tiles.phase()).isEmpty();
    assertThat(tiles.lead()).isEqualTo(plain("Run over", "12 h", "", "recorded"));
    assertThat(tile(tiles, "Heat delivered"))
        .isEqualTo(plain("Heat delivered", "61", "kWh", "± 3"));
    assertThat(tile(tiles, "Of nameplate"))
        .isEqualTo(plain("Of nameplate", "96", "%", "± 5, steady"));
    assertThat(tile(tiles, "Starts seen").value()).isEqualTo("1");
  }

  @Test
  void everyReadingHasItsAgeAndOneThatCannotBeTrueIsSaid() {
    List<ReadingRow> rows =
        ReadingRow.of(InventedNight.recording(), InventedNight.minute(720), UnitChoice.METRIC);
    assertThat(rows).hasSameSizeAs(InventedNight.recording().series().keySet());
    assertThat(rows).allMatch(row -> row.age().equals("5 s old") && row.possible());
    assertThat(rows)
        .filteredOn(row -> row.title().equals("Pump"))
        .extracting(ReadingRow::value)
        .containsExactly("off");
  }

  private static Tile tile(Tiles tiles, String name) {
    Optional<Tile> found =
        tiles.figures().stream().filter(tile -> tile.name().equals(name)).findFirst();
    assertThat(found).as(name).isPresent();
    return found.orElseThrow();
  }

  private static Tile plain(String name, String value, String unit, String foot) {
    return new Tile(name, value, unit, foot, Tone.PLAIN);
  }
}
