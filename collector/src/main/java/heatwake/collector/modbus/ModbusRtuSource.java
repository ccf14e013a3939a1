package heatwake.collector.modbus;

import heatwake.analysis.series.EventKind;
import heatwake.collector.frame.RegisterValue;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Intake;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.probe.Reading;
import heatwake.collector.probe.ReadingMaker;
import heatwake.collector.rig.ProbeSpec;
import heatwake.collector.rig.SourceSpec;
import heatwake.collector.serial.LineSettings;
import heatwake.collector.serial.OpenPort;
import heatwake.collector.serial.PortFinder;
import heatwake.collector.serial.PortKeeper;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Readings from units on a Modbus RTU bus, each probe at its own pace. */
public final class ModbusRtuSource implements ProbeSource {
  private static final long LONGEST_NAP_MS = 200;
  private static final int ILLEGAL_DATA_ADDRESS = 2;
  private static final int DEVICE_BUSY = 6;
  private static final long REFUSED_PAUSE_NANOS = Duration.ofSeconds(60).toNanos();

  private final SourceSpec.ModbusRtu spec;
  private final LineSettings settings;
  private final List<Turn> turns = new ArrayList<>();
  private final Map<Integer, UnitHealth> units = new HashMap<>();
  private final PortKeeper keeper;

  private Intake intake;
  private ReadingMaker readings;

  /** A block and when it is due. */
  private static final class Turn {
    private final RegisterBlock block;
    private long dueNanos;
    private boolean refused;

    Turn(RegisterBlock block, long dueNanos) {
      this.block = block;
      this.dueNanos = dueNanos;
    }

    private long intervalNanos() {
      return (long) (block.intervalS() * 1e9);
    }

    /** Keeps the pace; what was missed is not made up for. */
    void done(long nowNanos) {
      dueNanos += intervalNanos();
      if (dueNanos - nowNanos < 0) {
        dueNanos = nowNanos + intervalNanos();
      }
    }
  }

  /** A source, not yet started. */
  public ModbusRtuSource(SourceSpec.ModbusRtu spec, List<ProbeSpec> probes, PortFinder ports) {
    this.spec = spec;
    this.settings = new LineSettings(spec.baud(), spec.parity(), spec.stopBits());
    List<RegisterTap> taps =
        probes.stream()
            .filter(probe -> probe.address() instanceof ProbeSpec.Address.Register)
            .map(probe -> RegisterTap.of(probe, (ProbeSpec.Address.Register) probe.address()))
            .toList();
    long now = System.nanoTime();
    for (RegisterBlock block : RegisterBlock.covering(taps)) {
      turns.add(new Turn(block, now));
      units.putIfAbsent(block.unitId(), new UnitHealth());
    }
    this.keeper = new PortKeeper(spec.name(), spec.port(), settings, ports, this::poll);
  }

  @Override
  public String name() {
    return spec.name();
  }

  @Override
  public void start(Intake target) throws InterruptedException {
    intake = target;
    readings = new ReadingMaker(target);
    keeper.start(target);
  }

  /** Reads what is due until the port is gone. */
  private void poll(OpenPort port) throws InterruptedException {
    Bus bus = new Bus(new BusPort(spec.port(), port, settings));
    keeper.works();
    while (!keeper.isClosing()) {
      Optional<Turn> next = nextTurn(System.nanoTime());
      if (next.isEmpty()) {
        Thread.sleep(napMs(System.nanoTime()));
      } else if (!take(bus, next.get())) {
        return;
      }
    }
  }

  private Optional<Turn> nextTurn(long nowNanos) {
    Turn longestDue = null;
    for (Turn turn : turns) {
      boolean ready =
          turn.dueNanos - nowNanos <= 0 && units.get(turn.block.unitId()).mayBeAsked(nowNanos);
      if (ready && (longestDue == null || turn.dueNanos - longestDue.dueNanos < 0)) {
        longestDue = turn;
      }
    }
    return Optional.ofNullable(longestDue);
  }

  private long napMs(long nowNanos) {
    long shortest = LONGEST_NAP_MS;
    for (Turn turn : turns) {
      shortest = Math.min(shortest, Math.max(1, (turn.dueNanos - nowNanos) / 1_000_000));
    }
    return shortest;
  }

  /**
   * Asks for one block, a second time if a unit that is otherwise well did not answer.
   *
   * @return whether the port is still there
   */
  private boolean take(Bus bus, Turn turn) throws InterruptedException {
    RegisterBlock block = turn.block;
    UnitHealth unit = units.get(block.unitId());
    Bus.Answer answer = bus.read(block);
    boolean failed = answer instanceof Bus.Answer.Silence || answer instanceof Bus.Answer.Noise;
    if (failed && !unit.isSilent()) {
      answer = bus.read(block);
    }
    long nowNanos = System.nanoTime();
    if (answer instanceof Bus.Answer.PortGone) {
      return false;
    }
    turn.done(nowNanos);
    if (answer instanceof Bus.Answer.Registers registers) {
      isBack(block.unitId(), unit);
      isGranted(turn);
      keeper.heard();
      deliver(block, registers.words());
    } else if (answer instanceof Bus.Answer.Refusal refusal) {
      isBack(block.unitId(), unit);
      refused(turn, refusal.code(), nowNanos);
    } else {
      unit.failed(nowNanos);
      intake.began(
          EventKind.SOURCE_LOST,
          subject(block.unitId()),
          answer instanceof Bus.Answer.Silence
              ? "no answer; check wiring, unit id and baud"
              : "its answers are garbled; check wiring, termination, baud and parity");
    }
    return true;
  }

  private void isBack(int unitId, UnitHealth unit) {
    if (unit.isSilent()) {
      intake.ended(EventKind.SOURCE_LOST, subject(unitId));
    }
    unit.answered();
  }

  private void isGranted(Turn turn) {
    if (turn.refused) {
      turn.refused = false;
      for (RegisterTap tap : turn.block.taps()) {
        intake.ended(EventKind.SOURCE_LOST, subject(turn.block.unitId(), tap));
      }
    }
  }

  private String subject(int unitId, RegisterTap tap) {
    return subject(unitId) + " register " + tap.register().number();
  }

  private String subject(int unitId) {
    return spec.name() + " unit " + unitId;
  }

  private void deliver(RegisterBlock block, int[] words) throws InterruptedException {
    long timeMs = intake.nowMs();
    List<Reading> got = new ArrayList<>();
    for (RegisterTap tap : block.taps()) {
      double sent =
          RegisterValue.decode(
              tap.register().type(),
              tap.register().wordOrder(),
              words,
              tap.register().number() - block.first());
      readings.reading(tap.channel(), tap.conversion(), sent, timeMs, false).ifPresent(got::add);
    }
    if (!got.isEmpty()) {
      intake.deliver(Delivery.of(got));
    }
  }

  private void refused(Turn turn, int code, long nowNanos) {
    RegisterBlock block = turn.block;
    if (code == ILLEGAL_DATA_ADDRESS && block.taps().size() > 1) {
      // Perhaps only the registers in between do not exist: ask for each probe alone.
      turns.remove(turn);
      block.apart().forEach(single -> turns.add(new Turn(single, nowNanos)));
      return;
    }
    if (code != DEVICE_BUSY) {
      turn.dueNanos = nowNanos + Math.max(REFUSED_PAUSE_NANOS, turn.intervalNanos());
    }
    for (RegisterTap tap : block.taps()) {
      if (code != DEVICE_BUSY) {
        turn.refused = true;
        intake.began(
            EventKind.SOURCE_LOST, subject(block.unitId(), tap), "refused: " + meaning(code));
      }
      intake.happened(
          EventKind.UNREADABLE,
          tap.channel().id(),
          subject(block.unitId())
              + " refuses register "
              + tap.register().number()
              + ": "
              + meaning(code));
    }
  }

  /** Modbus application protocol specification 1.1b3, section 7. */
  private static String meaning(int code) {
    return switch (code) {
      case 1 -> "it does not know the function; try table = \"holding\" or \"input\"";
      case ILLEGAL_DATA_ADDRESS -> "it has no such register (counted from zero)";
      case 3 -> "illegal data value";
      case 4 -> "device failure";
      case DEVICE_BUSY -> "it is busy";
      default -> "exception " + code;
    };
  }

  @Override
  public void close() {
    keeper.close();
  }
}
