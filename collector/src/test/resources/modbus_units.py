"""Three Modbus RTU units on a serial port, by pymodbus (Debian package python3-pymodbus).

Unit 1 holds in its input registers from 0: 25.0625 as float32, high word first; the same, low word
first; -2 as int16; 65534 as uint16; -70000 as int32; 4000000000 as uint32. Its holding register 5 is
321. Unit 2 has input registers 10 and 14 only: asked for 11 to 13 it refuses. Unit 9 does not exist
and stays silent. Prints a line once they can answer.
"""
import asyncio
import sys

from pymodbus.datastore import (
    ModbusSequentialDataBlock,
    ModbusServerContext,
    ModbusSlaveContext,
    ModbusSparseDataBlock,
)
from pymodbus.server import StartAsyncSerialServer
from pymodbus.transaction import ModbusRtuFramer

one = ModbusSlaveContext(
    ir=ModbusSequentialDataBlock(
        0,
        [0x41C8, 0x8000, 0x8000, 0x41C8, 0xFFFE, 0xFFFE, 0xFFFE, 0xEE90, 0xEE6B, 0x2800],
    ),
    hr=ModbusSequentialDataBlock(5, [321]),
    zero_mode=True,
)
two = ModbusSlaveContext(ir=ModbusSparseDataBlock({10: 1000, 14: 1400}), zero_mode=True)


async def serve():
    units = await StartAsyncSerialServer(
        context=ModbusServerContext(slaves={1: one, 2: two}, single=False),
        framer=ModbusRtuFramer,
        port=sys.argv[1],
        baudrate=19200,
        timeout=0.05,
        ignore_missing_slaves=True,
        defer_start=True,
    )
    await units.start()
    print("answering", flush=True)
    await units.serve_forever()


asyncio.run(serve())
