package heatwake.analysis.docs;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/** A page of the documentation that is made from code. */
record Page(String name) {
  /** System property that makes the pages be written instead of compared. */
  private static final String WRITE = "docs.write";

  private Path file() {
    return Path.of("..", "docs", name);
  }

  /** The command that makes the page anew, for the page itself. */
  String command(String test) {
    return "make it anew with `mvn -q -pl analysis test -Dtest=%s -Dtest.jvm.args=-D%s=true`."
        .formatted(test, WRITE);
  }

  /** Compares the page with what it should say; writes it if told to. */
  void assertSame(String wanted) {
    try {
      if (Boolean.getBoolean(WRITE)) {
        Files.writeString(file(), wanted);
      }
      assertThat(Files.exists(file()) ? Files.readString(file()) : "")
          .as("docs/%s is not what the code says; the page tells how to make it anew", name)
          .isEqualTo(wanted);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
