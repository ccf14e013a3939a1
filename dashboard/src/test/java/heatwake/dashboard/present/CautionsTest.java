package heatwake.dashboard.present;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

class CautionsTest {
  @Test
  void pageOfCautionsHoldsTheSentencesThatAreShown() throws IOException {
    List<String> listed =
        Files.readAllLines(Path.of("..", "docs", "cautions.md")).stream()
            .filter(line -> line.startsWith("- "))
            .map(line -> line.substring(2))
            .toList();
    assertThat(listed).isEqualTo(Cautions.all());
  }
}
