package heatwake.collector.serial;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

/** Paths that cannot be opened, by the system's own answers. */
class OpenPortTest {
  @Test
  void saysWhatIsWrongInWords() {
    assertThatThrownBy(() -> OpenPort.open("/dev/null", LineSettings.of(9600)))
        .isInstanceOf(PortException.class)
        .hasMessage("/dev/null: not a serial port; heatwake ports lists those there are");
    assertThatThrownBy(() -> OpenPort.open("/dev/no-such-port", LineSettings.of(9600)))
        .isInstanceOf(PortException.class)
        .hasMessage("/dev/no-such-port: no such port; is the adapter plugged in?");
  }
}
