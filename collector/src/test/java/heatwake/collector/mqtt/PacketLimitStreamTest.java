package heatwake.collector.mqtt;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.SocketTimeoutException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import org.junit.jupiter.api.Test;

class PacketLimitStreamTest {
  private static byte[] hex(String text) {
    return HexFormat.of().parseHex(text.replace(" ", ""));
  }

  private static byte[] through(byte[] bytes) throws IOException {
    return new PacketLimitStream(new ByteArrayInputStream(bytes), duplicate -> {}).readAllBytes();
  }

  // MQTT 3.1.1, section 2.2.3, table 2.4: 0x7F is 127, 80 01 is 128, FF 7F is 16 383.
  @Test
  void packetsPassUnchanged() throws IOException {
    ByteArrayOutputStream stream = new ByteArrayOutputStream();
    stream.write(hex("20 02 00 00"));
    stream.write(hex("30 7f"));
    stream.write(new byte[127]);
    stream.write(hex("d0 00"));
    stream.write(hex("32 80 01"));
    stream.write(new byte[128]);
    stream.write(hex("32 ff 7f"));
    stream.write(new byte[16_383]);
    assertThat(through(stream.toByteArray())).isEqualTo(stream.toByteArray());
  }

  @Test
  void oversizedPublishIsCutAndWhatFollowsIsInStep() throws IOException {
    ByteArrayOutputStream stream = new ByteArrayOutputStream();
    // C0 84 3D is 1 000 000: 0x40 + 0x04 * 128 + 0x3D * 16 384.
    stream.write(hex("32 c0 84 3d"));
    stream.write(new byte[1_000_000]);
    stream.write(hex("d0 00"));
    byte[] got = through(stream.toByteArray());
    // 262 144 is written 80 80 10.
    assertThat(got).startsWith(hex("32 80 80 10")).endsWith(hex("d0 00"));
    assertThat(got).hasSize(4 + 262_144 + 2);
  }

  @Test
  void oversizedPacketOfAnotherKindEndsTheConnection() {
    assertThatThrownBy(() -> through(hex("90 c0 84 3d")))
        .isInstanceOf(IOException.class)
        .hasMessage("the broker sends a packet of 1000000 bytes");
  }

  @Test
  void whatIsNotMqttEndsTheConnection() {
    assertThatThrownBy(() -> through(hex("30 ff ff ff ff ff")))
        .hasMessage("the broker sends something that is not MQTT");
  }

  @Test
  void marksOfDuplicatesAreSeen() throws IOException {
    List<Boolean> marks = new ArrayList<>();
    new PacketLimitStream(new ByteArrayInputStream(hex("32 00 3a 00 d0 00 30 00")), marks::add)
        .readAllBytes();
    assertThat(marks).containsExactly(false, true, false);
  }

  @Test
  void timeOutInTheMiddleOfAHeaderLosesNothing() throws IOException {
    byte[] bytes = hex("32 80 01");
    InputStream hesitant =
        new InputStream() {
          private int calls;

          @Override
          public int read(byte[] target, int offset, int length) throws IOException {
            target[offset] = (byte) read();
            return 1;
          }

          @Override
          public int read() throws IOException {
            if (calls++ % 2 == 1) {
              throw new SocketTimeoutException();
            }
            int index = calls / 2;
            return index < bytes.length ? bytes[index] & 0xFF : 0;
          }
        };
    PacketLimitStream stream = new PacketLimitStream(hesitant, duplicate -> {});
    byte[] got = new byte[3];
    for (int have = 0; have < got.length; ) {
      try {
        int next = stream.read();
        got[have++] = (byte) next;
      } catch (SocketTimeoutException again) {
        // As the MQTT client does.
      }
    }
    assertThat(got).isEqualTo(bytes);
  }
}
