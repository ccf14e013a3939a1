package heatwake.collector.serial;

import heatwake.analysis.series.EventKind;
import heatwake.collector.frame.Excerpt;
import heatwake.collector.frame.LineDecoder;
import heatwake.collector.frame.LineFramer;
import heatwake.collector.frame.LineFramer.Frame;
import heatwake.collector.probe.Delivery;
import heatwake.collector.probe.Intake;
import heatwake.collector.probe.ProbeSource;
import heatwake.collector.probe.ProbeTap;
import heatwake.collector.probe.Reading;
import heatwake.collector.probe.ReadingMaker;
import heatwake.collector.rig.ProbeSpec;
import heatwake.collector.rig.SourceSpec;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** Readings from a serial line, one message a line. */
public final class SerialSource implements ProbeSource {
  /** Bytes of a line follow each other more closely than this, at any speed and over USB. */
  private static final int BETWEEN_LINES_MS = 60;

  private static final int READ_AT_MOST = 4096;

  private final SourceSpec.Serial spec;
  private final List<ProbeTap> taps;
  private final LineDecoder decoder;
  private final PortKeeper keeper;

  private Intake intake;
  private ReadingMaker readings;

  /** A source, not yet started. */
  public SerialSource(SourceSpec.Serial spec, List<ProbeSpec> probes, PortFinder ports) {
    this.spec = spec;
    this.taps =
        probes.stream()
            .filter(probe -> probe.address() instanceof ProbeSpec.Address.Field)
            .map(probe -> ProbeTap.of(probe, ((ProbeSpec.Address.Field) probe.address()).field()))
            .toList();
    this.decoder = LineDecoder.of(spec.lines(), fields(taps));
    this.keeper =
        new PortKeeper(spec.name(), spec.port(), LineSettings.of(spec.baud()), ports, this::listen);
  }

  private static Set<String> fields(List<ProbeTap> taps) {
    Set<String> fields = new LinkedHashSet<>();
    for (ProbeTap tap : taps) {
      fields.add(tap.field());
      tap.time().ifPresent(fields::add);
    }
    return fields;
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

  /** Reads lines until the port is gone. */
  private void listen(OpenPort port) throws InterruptedException {
    LineFramer framer = new LineFramer();
    byte[] bytes = new byte[READ_AT_MOST];
    port.readTimeout(BETWEEN_LINES_MS);
    int count = port.read(bytes);
    if (count < 0) {
      return;
    }
    if (count == 0) {
      framer.quietAtFirst();
    }
    keeper.works();
    port.readTimeout(OpenPort.READ_TIMEOUT_MS);
    while (count >= 0 && !keeper.isClosing()) {
      long nowMs = System.nanoTime() / 1_000_000;
      take(count == 0 ? framer.passed(nowMs) : framer.feed(bytes, count, nowMs));
      if (count > 0) {
        keeper.heard();
      }
      count = port.read(bytes);
    }
    take(framer.torn());
  }

  private void take(List<Frame> frames) throws InterruptedException {
    for (Frame frame : frames) {
      if (frame instanceof Frame.Line line) {
        take(line.text());
      } else if (frame instanceof Frame.Remainder rest) {
        if (decoder.provesItself()
            && decoder.decode(rest.text()) instanceof LineDecoder.Line.Fields) {
          take(rest.text());
        }
      } else if (frame instanceof Frame.Broken broken) {
        unreadable(broken.reason(), broken.beginning());
      }
    }
  }

  private void take(String text) throws InterruptedException {
    LineDecoder.Line line = decoder.decode(text);
    if (line instanceof LineDecoder.Line.Garbage garbage) {
      unreadable(garbage.reason(), text);
    } else if (line instanceof LineDecoder.Line.Fields fields) {
      fields.complaint().ifPresent(reason -> unreadable(reason, text));
      List<Reading> got =
          readings.from(fields.message(), taps, new ReadingMaker.Age.Fresh(intake.nowMs()));
      if (!got.isEmpty()) {
        intake.deliver(Delivery.of(got));
      } else if (taps.stream().noneMatch(tap -> fields.message().field(tap.field()).isPresent())) {
        unreadable("none of the rig's fields in it", text);
      }
    }
  }

  private void unreadable(String reason, String text) {
    intake.happened(EventKind.UNREADABLE, spec.name(), "line " + Excerpt.of(text) + ": " + reason);
  }

  @Override
  public void close() {
    keeper.close();
  }
}
