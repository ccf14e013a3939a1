package heatwake.collector.broker;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import heatwake.collector.peer.RealProgram;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PasswordHashTest {
  @TempDir private Path folder;

  @Test
  void agreesWithMosquittosOwnTool() throws Exception {
    Path users = folder.resolve("users");
    RealProgram.run(folder, "mosquitto_passwd", "-c", "-b", users.toString(), "probe", "pässword");
    String written = Files.readString(users).strip();
    PasswordHash hash = PasswordHash.parse(written.substring(written.indexOf(':') + 1));
    assertThat(hash.matches("pässword")).isTrue();
    assertThat(hash.matches("password")).isFalse();
    assertThat(hash.matches("")).isFalse();
  }

  @Test
  void isReadAsItIsWrittenAndNeverTheSameTwice() {
    PasswordHash hash = PasswordHash.of("s3cret");
    assertThat(PasswordHash.parse(hash.toString()).matches("s3cret")).isTrue();
    assertThat(PasswordHash.of("s3cret")).asString().isNotEqualTo(hash.toString());
    assertThat(hash.toString()).doesNotContain("s3cret");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "s3cret",
        "$6$10$AA==$AA==",
        "$7$x$AA==$AA==",
        "$7$0$AA==$AA==",
        "$7$10$$AA==",
        "$7$99999999999$AA==$AA==",
        "$7$10$?$AA=="
      })
  void whatIsNoHashIsRefused(String text) {
    assertThatThrownBy(() -> PasswordHash.parse(text)).isInstanceOf(IllegalArgumentException.class);
  }
}
