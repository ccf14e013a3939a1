package heatwake.dashboard.json;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import heatwake.analysis.Analysis;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.dashboard.example.InventedNight;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * However a run was sampled, its JSON has no key but those on the page, and every figure is one.
 */
class JsonOfRoughRunsTest {
  private static final int RUNS = 15;

  @ParameterizedTest
  @ValueSource(longs = {11, 12})
  void isWellFormed(long seed) throws IOException {
    String page = Files.readString(Path.of("../docs/json.md"));
    Random random = new Random(seed);
    for (int run = 0; run < RUNS; run++) {
      check(FindingsJson.of(Analysis.of(rough(InventedNight.recording(), random))), page);
    }
  }

  private static void check(JsonNode node, String page) {
    node.fieldNames()
        .forEachRemaining(
            key -> {
              JsonNode value = node.get(key);
              String figure = key.replaceFirst("_u(_|$)", "$1");
              boolean known =
                  Channel.find(key).isPresent()
                      || page.contains("`" + key + "`")
                      || (!figure.equals(key) && page.contains("`" + figure + "`"));
              assertThat(known).as(key).isTrue();
              assertThat(value.isNull() || (value.isTextual() && value.asText().isBlank()))
                  .as(key)
                  .isFalse();
              if (value.isNumber()) {
                assertThat(value.asDouble()).as(key).isFinite();
              }
              if (key.equals("start") || key.equals("end")) {
                assertThat(Instant.parse(value.asText())).as(key).isNotNull();
              }
              check(value, page);
            });
    if (node.isArray()) {
      node.forEach(one -> check(one, page));
    }
  }

  /** Some channels, each thinned at random, with a silence, values that are none, or one alone. */
  private static Recording rough(Recording tidy, Random random) {
    Map<Channel, Series> series = new EnumMap<>(Channel.class);
    double kept = 0.2 + 0.8 * random.nextDouble();
    tidy.series()
        .forEach(
            (channel, one) -> {
              if (random.nextDouble() < kept) {
                series.put(channel, thinned(one, random));
              }
            });
    return new Recording(
        tidy.run(), tidy.rig(), tidy.startMs(), tidy.endMs(), series, List.of(), List.of());
  }

  private static Series thinned(Series tidy, Random random) {
    int most = 1 + random.nextInt(40);
    int silenceFrom = random.nextInt(tidy.size());
    int silenceTo = silenceFrom + random.nextInt(1 + tidy.size() / 4);
    double noNumbers = random.nextInt(4) == 0 ? 0.02 : 0;
    Series.Builder kept = Series.of(tidy.channel());
    int r = random.nextInt(20) == 0 ? tidy.size() - 1 : 0;
    while (r < tidy.size()) {
      if (r < silenceFrom || r >= silenceTo) {
        kept.add(tidy.timeMs(r), random.nextDouble() < noNumbers ? Double.NaN : tidy.value(r));
      }
      r += 1 + random.nextInt(most);
    }
    return kept.build();
  }
}
