package heatwake.dashboard.score;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.refrigerant.Refrigerant;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.RunEvent;
import heatwake.analysis.series.Series;
import heatwake.analysis.site.CompressorSpeed;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Pool;
import heatwake.analysis.site.Probe;
import heatwake.analysis.site.PumpPoint;
import heatwake.analysis.site.Rating;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.analysis.site.Rig;
import heatwake.analysis.site.Site;
import heatwake.dashboard.demo.plant.SiteDesign;
import heatwake.dashboard.demo.plant.Tap;
import heatwake.dashboard.demo.plant.Truth;
import heatwake.dashboard.demo.plant.machine.Nameplate;
import heatwake.dashboard.demo.plant.night.Night;
import heatwake.dashboard.demo.plant.sensor.SensorSpec;
import heatwake.dashboard.demo.plant.water.Circuit;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Set;

/** Plays a simulated run straight into a recording, as a recorder would have kept it. */
record SimulatedRecording(Recording recording, Truth truth) {

  static SimulatedRecording of(Case one) {
    Night night = one.night();
    Map<Tap, Series.Builder> builders = new EnumMap<>(Tap.class);
    Map<Tap, Long> last = new EnumMap<>(Tap.class);
    for (SensorSpec probe : night.probes()) {
      builders.put(probe.tap(), Series.of(Channel.of(probe.tap().channel())));
    }
    Truth truth =
        night.play(
            (tap, timeMs, value) -> {
              // A recorder keeps the first of two readings with one time; after a backward step of
              // the clock it has nowhere to put readings until the clock has caught up.
              if (timeMs > last.getOrDefault(tap, Long.MIN_VALUE)) {
                double si = Channel.of(tap.channel()).storedUnit().toSi(value);
                builders.get(tap).add(timeMs, si);
                last.put(tap, timeMs);
              }
            });
    Map<Channel, Series> series = new EnumMap<>(Channel.class);
    builders.forEach((tap, builder) -> series.put(Channel.of(tap.channel()), builder.build()));
    Recording recording =
        new Recording(
            1,
            rig(night, one.nameplate()),
            night.startMs(),
            night.endMs(),
            series,
            events(night),
            List.of());
    return new SimulatedRecording(recording, truth);
  }

  private static List<RunEvent> events(Night night) {
    List<RunEvent> events = new ArrayList<>();
    for (Night.ClockStep step : night.clockSteps()) {
      long at = night.startMs() + Math.round(step.atS() * 1000);
      events.add(
          new RunEvent(
              EventKind.CLOCK_STEP,
              "clock",
              at,
              OptionalLong.of(at),
              1,
              "clock stepped by " + step.byMs() + " ms"));
    }
    return events;
  }

  private static Rig rig(Night night, Nameplate plate) {
    SiteDesign site = night.site();
    Map<Channel, Probe> probes = new EnumMap<>(Channel.class);
    for (SensorSpec probe : night.probes()) {
      Channel channel = Channel.of(probe.tap().channel());
      probes.put(channel, new Probe(uncertainty(channel, probe), OptionalDouble.empty()));
    }
    return new Rig(
        new Site("bench", site.altitudeM()),
        new Pool(
            OptionalDouble.of(site.basin().volumeM3()),
            OptionalDouble.of(site.basin().surfaceM2()),
            site.basin().covered(),
            0,
            OptionalDouble.of(site.setpointC() + 273.15)),
        Optional.empty(),
        pumpCurve(site.circuit()),
        heater(site, plate, speed(site, probes.keySet())),
        probes);
  }

  private static ReadingUncertainty uncertainty(Channel channel, SensorSpec probe) {
    if (probe.stated() == 0) {
      return new ReadingUncertainty.Unstated();
    }
    if (probe.relative()) {
      return new ReadingUncertainty.Relative(probe.stated());
    }
    double si = channel.storedUnit().toSi(probe.stated()) - channel.storedUnit().toSi(0);
    return new ReadingUncertainty.Absolute(si);
  }

  private static List<PumpPoint> pumpCurve(Circuit circuit) {
    List<PumpPoint> points = new ArrayList<>();
    for (double share : new double[] {0.3, 0.6, 0.9, 1.1, 1.25}) {
      double flow = share * circuit.totalM3PerS();
      // The plate's curve is that of pump and suction line together, as the filter's gauge sees it.
      double suction = circuit.suctionPa() * share * share;
      points.add(new PumpPoint(flow, circuit.pumpHeadPa(flow) - suction));
    }
    return points;
  }

  /** Who clips on the whole circuit reads the whole plate; others do not say how it is driven. */
  private static Optional<CompressorSpeed> speed(SiteDesign site, Set<Channel> clipped) {
    boolean inverter = site.heater().compressor().inverter();
    return clipped.contains(Channel.TEMP_LIQUID)
        ? Optional.of(inverter ? CompressorSpeed.VARIABLE : CompressorSpeed.FIXED)
        : Optional.empty();
  }

  private static Heater heater(SiteDesign site, Nameplate plate, Optional<CompressorSpeed> speed) {
    List<Rating> ratings =
        plate.tests().stream()
            .map(
                test ->
                    new Rating(
                        test.airC() + 273.15,
                        OptionalDouble.of(test.humidity()),
                        test.waterC() + 273.15,
                        test.heatW(),
                        OptionalDouble.of(test.powerW())))
            .toList();
    return new Heater(
        "unit 1",
        Optional.of(Refrigerant.of(site.heater().fluid().designation())),
        OptionalDouble.of(plate.flowMinM3PerS()),
        OptionalDouble.of(plate.flowMaxM3PerS()),
        OptionalDouble.of(site.heater().electric().nominalV()),
        OptionalDouble.of(plate.currentMaxA()),
        OptionalDouble.of(plate.breakerA()),
        OptionalDouble.of(site.heater().sequence().restartDelayS()),
        OptionalDouble.empty(),
        speed,
        ratings);
  }
}
