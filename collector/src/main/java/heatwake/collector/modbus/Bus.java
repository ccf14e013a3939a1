package heatwake.collector.modbus;

import com.ghgande.j2mod.modbus.ModbusException;
import com.ghgande.j2mod.modbus.ModbusSlaveException;
import com.ghgande.j2mod.modbus.io.ModbusTransaction;
import com.ghgande.j2mod.modbus.msg.ModbusRequest;
import com.ghgande.j2mod.modbus.msg.ReadInputRegistersRequest;
import com.ghgande.j2mod.modbus.msg.ReadInputRegistersResponse;
import com.ghgande.j2mod.modbus.msg.ReadMultipleRegistersRequest;
import com.ghgande.j2mod.modbus.msg.ReadMultipleRegistersResponse;
import com.ghgande.j2mod.modbus.procimg.InputRegister;
import com.ghgande.j2mod.modbus.procimg.Register;
import heatwake.collector.rig.ProbeSpec.Table;
import java.util.Arrays;

/** Asks units on an open bus for registers, one request at a time. */
final class Bus {
  private final BusPort port;

  Bus(BusPort port) {
    this.port = port;
  }

  /** What came of a request. */
  sealed interface Answer {
    /** The registers, each an unsigned 16-bit word. */
    @SuppressWarnings("ArrayRecordComponent") // Never compared; read once by who asked.
    record Registers(int[] words) implements Answer {}

    /** Nothing came in time. */
    record Silence() implements Answer {}

    /** Something came that is no answer to the request. */
    record Noise() implements Answer {}

    /**
     * The unit answered that it will not.
     *
     * @param code exception code (Modbus application protocol 1.1b3, section 7)
     */
    record Refusal(int code) implements Answer {}

    /** The serial port is gone. */
    record PortGone() implements Answer {}
  }

  /** Reads the registers of a block. */
  Answer read(RegisterBlock block) {
    ModbusRequest request =
        block.table() == Table.INPUT
            ? new ReadInputRegistersRequest(block.first(), block.count())
            : new ReadMultipleRegistersRequest(block.first(), block.count());
    request.setUnitID(block.unitId());
    ModbusTransaction transaction = port.getModbusTransport().createTransaction();
    transaction.setRequest(request);
    // Trying again is decided by who knows how the other units wait.
    transaction.setRetries(1);
    transaction.setCheckingValidity(true);
    port.beginRequest();
    try {
      transaction.execute();
    } catch (ModbusSlaveException refused) {
      return new Answer.Refusal(refused.getType());
    } catch (ModbusException failed) {
      return port.isGone() ? new Answer.PortGone() : silenceOrNoise();
    }
    int[] words = words(transaction);
    return words.length == block.count() ? new Answer.Registers(words) : new Answer.Noise();
  }

  private Answer silenceOrNoise() {
    return port.received() == 0 ? new Answer.Silence() : new Answer.Noise();
  }

  private static int[] words(ModbusTransaction transaction) {
    if (transaction.getResponse() instanceof ReadInputRegistersResponse response) {
      return Arrays.stream(response.getRegisters())
          .mapToInt(InputRegister::toUnsignedShort)
          .toArray();
    }
    if (transaction.getResponse() instanceof ReadMultipleRegistersResponse response) {
      return Arrays.stream(response.getRegisters()).mapToInt(Register::toUnsignedShort).toArray();
    }
    return new int[0];
  }
}
