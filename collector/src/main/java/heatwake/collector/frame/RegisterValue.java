package heatwake.collector.frame;

import heatwake.collector.rig.ProbeSpec.RegisterType;
import heatwake.collector.rig.ProbeSpec.WordOrder;

/**
 * Reads numbers that lie in Modbus registers. A register is 16 bits, the high byte sent first; the
 * Modbus specification does not say which of two registers comes first, so the rig does.
 */
public final class RegisterValue {
  private RegisterValue() {}

  /**
   * The number that begins at a register.
   *
   * @param registers unsigned 16-bit words as read
   * @param first index of its first word
   */
  public static double decode(RegisterType type, WordOrder order, int[] registers, int first) {
    return switch (type) {
      case INT16 -> (short) registers[first];
      case UINT16 -> registers[first] & 0xFFFF;
      case INT32 -> bits(order, registers, first);
      case UINT32 -> Integer.toUnsignedLong(bits(order, registers, first));
      case FLOAT32 -> Float.intBitsToFloat(bits(order, registers, first));
    };
  }

  private static int bits(WordOrder order, int[] registers, int first) {
    int high = registers[order == WordOrder.BIG ? first : first + 1];
    int low = registers[order == WordOrder.BIG ? first + 1 : first];
    return (high << 16) | (low & 0xFFFF);
  }
}
