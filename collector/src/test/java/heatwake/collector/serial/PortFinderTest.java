package heatwake.collector.serial;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PortFinderTest {
  private static final UsbIdentity CLIPS = UsbIdentity.parse("usb:0403:6001:A5").orElseThrow();
  private static final UsbIdentity METER = UsbIdentity.parse("usb:0403:6001:B7").orElseThrow();
  private static final UsbIdentity NAMELESS = UsbIdentity.parse("usb:1a86:7523").orElseThrow();

  private static PortFinder among(PortInfo... present) {
    return new PortFinder(() -> List.of(present));
  }

  private static PortInfo port(String path, UsbIdentity usb) {
    return new PortInfo(path, "adapter", Optional.of(usb));
  }

  @Test
  void pathStandsForItselfAtFirst() {
    assertThat(among().path("/dev/ttyUSB0", Optional.empty())).contains("/dev/ttyUSB0");
  }

  @Test
  void adapterIsFollowedToItsNewName() {
    PortFinder ports = among(port("/dev/ttyUSB0", METER), port("/dev/ttyUSB1", CLIPS));
    assertThat(ports.path("/dev/ttyUSB0", Optional.of(CLIPS))).contains("/dev/ttyUSB1");
  }

  @Test
  void adapterThatIsAwayIsAwaitedAtItsPath() {
    assertThat(among().path("/dev/ttyUSB0", Optional.of(CLIPS))).contains("/dev/ttyUSB0");
  }

  @Test
  void identityNamesAPortWhereverItIs() {
    PortFinder ports = among(port("/dev/ttyUSB4", CLIPS), port("/dev/ttyUSB1", METER));
    assertThat(ports.path("usb:0403:6001:A5", Optional.empty())).contains("/dev/ttyUSB4");
    assertThat(ports.path("usb:0403:6001:C9", Optional.empty())).isEmpty();
  }

  @Test
  void twinsWithoutSerialNumberAreNotGuessedAt() {
    PortFinder twins = among(port("/dev/ttyUSB0", NAMELESS), port("/dev/ttyUSB1", NAMELESS));
    assertThat(twins.path("usb:1a86:7523", Optional.empty())).isEmpty();
    assertThat(twins.path("/dev/ttyUSB0", Optional.of(NAMELESS))).contains("/dev/ttyUSB0");
  }

  @Test
  void identityIsWrittenAsItIsRead() {
    assertThat(CLIPS).hasToString("usb:0403:6001:A5");
    assertThat(NAMELESS).hasToString("usb:1a86:7523");
    assertThat(UsbIdentity.parse("/dev/ttyUSB0")).isEmpty();
  }
}
