package heatwake.dashboard.example;

import heatwake.analysis.finding.BypassFigures;
import heatwake.analysis.finding.ChannelCoverage;
import heatwake.analysis.finding.CycleFigures;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.FlowKnowledge;
import heatwake.analysis.finding.HeatFigures;
import heatwake.analysis.finding.PoolFigures;
import heatwake.analysis.finding.Reason;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.finding.StartupCheck;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.finding.Verdict;
import heatwake.analysis.phase.Cycle;
import heatwake.analysis.phase.Phase;
import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.refrigerant.Refrigerant;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Note;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.RunEvent;
import heatwake.analysis.series.Series;
import heatwake.analysis.site.Heater;
import heatwake.analysis.site.Pool;
import heatwake.analysis.site.Probe;
import heatwake.analysis.site.Rating;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.analysis.site.Rig;
import heatwake.analysis.site.Site;
import heatwake.analysis.uncertainty.Estimate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalLong;
import java.util.Random;

/**
 * A night at an invented site with findings written by hand, for tests of what shows them. It is
 * drawn, not simulated: no physics holds in it.
 */
public final class InventedNight {
  /** 2031-05-04T18:00:00Z. */
  public static final long START_MS = 1_935_684_000_000L;

  private static final long STEP_MS = 5000;
  private static final int STEPS = 12 * 720;

  private InventedNight() {}

  /** Start of the given minute of the night. */
  public static long minute(double minutes) {
    return START_MS + Math.round(minutes * 60_000);
  }

  public static Rig rig() {
    Map<Channel, Probe> probes = new EnumMap<>(Channel.class);
    for (Channel channel : readings().keySet()) {
      probes.put(
          channel, new Probe(new ReadingUncertainty.Unstated(), OptionalDouble.of(STEP_MS / 1e3)));
    }
    return new Rig(
        new Site("Heron Lane", 40),
        new Pool(OptionalDouble.of(62), OptionalDouble.of(38), false, 0, OptionalDouble.of(301.15)),
        Optional.empty(),
        List.of(),
        new Heater(
            "unit 1",
            Optional.of(Refrigerant.R410A),
            OptionalDouble.of(90e-3 / 60),
            OptionalDouble.of(200e-3 / 60),
            OptionalDouble.of(230),
            OptionalDouble.of(16),
            OptionalDouble.of(20),
            OptionalDouble.of(240),
            OptionalDouble.empty(),
            Optional.empty(),
            List.of(
                new Rating(
                    300.15, OptionalDouble.of(0.8), 300.15, 16_500, OptionalDouble.of(2750)))),
        probes);
  }

  public static Recording recording() {
    return new Recording(
        1,
        rig(),
        START_MS,
        minute(720),
        readings(),
        List.of(
            new RunEvent(
                EventKind.PROBE_SILENT,
                "air-in",
                minute(400),
                OptionalLong.of(minute(425)),
                1,
                "air-in has been silent for 25 min")),
        List.of(
            new Note(minute(31), "bypass moved one quarter towards the heater"),
            new Note(minute(455), "owner's dog <b>asleep</b> on the lid")));
  }

  /** What the compressor does at a minute of the night. */
  static Phase phaseAt(double minute) {
    if (minute < 12) {
      return Phase.OFF;
    }
    if (minute < 20) {
      return Phase.CIRCULATING;
    }
    if (minute < 21) {
      return Phase.FAN;
    }
    if (minute < 30) {
      return Phase.STARTING;
    }
    if (minute < 290) {
      return Phase.STEADY;
    }
    if (minute < 296) {
      return Phase.DEFROST;
    }
    if (minute < 302) {
      return Phase.STARTING;
    }
    if (minute < 380) {
      return Phase.STEADY;
    }
    if (minute < 410) {
      return Phase.UNKNOWN;
    }
    if (minute < 470) {
      return (minute - 410) % 10 < 5 ? Phase.STARTING : Phase.CIRCULATING;
    }
    return minute < 640 ? Phase.STEADY : minute < 690 ? Phase.CIRCULATING : Phase.OFF;
  }

  private static Map<Channel, Series> readings() {
    Map<Channel, Series.Builder> building = new LinkedHashMap<>();
    for (Channel channel :
        List.of(
            Channel.WATER_IN,
            Channel.WATER_OUT,
            Channel.WATER_RETURN,
            Channel.FLOW_HEATER,
            Channel.FLOW_TOTAL,
            Channel.PRESSURE_DISCHARGE,
            Channel.PRESSURE_SUCTION,
            Channel.TEMP_LIQUID,
            Channel.TEMP_SUCTION,
            Channel.AIR_IN,
            Channel.AIR_OUT,
            Channel.POWER,
            Channel.CURRENT,
            Channel.PUMP_ON,
            Channel.FLOW_SWITCH)) {
      building.put(channel, Series.of(channel));
    }
    Random random = new Random(4);
    double heat = 0;
    for (int i = 0; i < STEPS; i++) {
      double minute = i * STEP_MS / 60e3;
      Phase phase = phaseAt(minute);
      if (phase == Phase.UNKNOWN) {
        continue;
      }
      double aim = phase == Phase.DEFROST ? -3 : phase.compressorRuns() ? 15.3 : 0;
      heat += (aim - heat) * 0.03;
      boolean pump = phase != Phase.OFF;
      double flow = pump ? 62 + 78 * Math.min(1, Math.max(0, minute - 31)) : 0;
      double in = 299.4 + minute * 0.002;
      double rise = flow > 0 ? heat * 14.3 / flow : 0;
      long at = START_MS + i * STEP_MS;
      building.get(Channel.WATER_IN).add(at, in + 0.03 * random.nextGaussian());
      building.get(Channel.WATER_OUT).add(at, in + rise + 0.11 + 0.03 * random.nextGaussian());
      building.get(Channel.WATER_RETURN).add(at, in + rise * 0.6 + 0.03 * random.nextGaussian());
      building.get(Channel.FLOW_HEATER).add(at, litres(flow, random));
      building.get(Channel.FLOW_TOTAL).add(at, litres(pump ? 230 : 0, random));
      building
          .get(Channel.PRESSURE_DISCHARGE)
          .add(at, 1.5e6 + heat * 0.053e6 + 4e3 * random.nextGaussian());
      building
          .get(Channel.PRESSURE_SUCTION)
          .add(at, 1.4e6 - heat * 0.03e6 + 4e3 * random.nextGaussian());
      building.get(Channel.TEMP_LIQUID).add(at, 295 + heat + 0.1 * random.nextGaussian());
      building.get(Channel.TEMP_SUCTION).add(at, 293 - heat * 0.5 + 0.1 * random.nextGaussian());
      double air = 293 - minute * 0.008;
      if (minute < 400 || minute > 425) {
        building.get(Channel.AIR_IN).add(at, air + 0.1 * random.nextGaussian());
      }
      building.get(Channel.AIR_OUT).add(at, air - heat * 0.4 + 0.1 * random.nextGaussian());
      double power = phase.compressorRuns() ? 2710 + 300 * Math.exp(-(minute % 60)) : 12;
      building.get(Channel.POWER).add(at, power + 8 * random.nextGaussian());
      building.get(Channel.CURRENT).add(at, Math.max(0, power / 226));
      building.get(Channel.PUMP_ON).add(at, pump ? 1 : 0);
      building.get(Channel.FLOW_SWITCH).add(at, pump && flow > 60 ? 1 : 0);
    }
    Map<Channel, Series> built = new EnumMap<>(Channel.class);
    building.forEach((channel, one) -> built.put(channel, one.build()));
    return built;
  }

  private static double litres(double perMinute, Random random) {
    return Math.max(0, perMinute + (perMinute > 0 ? 1.5 * random.nextGaussian() : 0)) * 1e-3 / 60;
  }

  public static Findings findings() {
    List<PhaseSpan> phases = new ArrayList<>();
    double from = 0;
    for (int minute = 1; minute <= 720; minute++) {
      if (minute == 720 || phaseAt(minute) != phaseAt(from)) {
        phases.add(new PhaseSpan(phaseAt(from), minute(from), minute(minute)));
        from = minute;
      }
    }
    Map<Channel, ChannelCoverage> channels = new EnumMap<>(Channel.class);
    recording()
        .series()
        .forEach(
            (channel, series) ->
                channels.put(channel, new ChannelCoverage(series.size(), 0.958, 5)));
    return new Findings(
        1,
        START_MS,
        minute(720),
        channels,
        new HeatFigures(
            Optional.of(new Estimate(61.2 * 3.6e6, 1.45 * 3.6e6)),
            1,
            Optional.of(new Estimate(11.9 * 3.6e6, 0.1 * 3.6e6)),
            1,
            Optional.of(new Estimate(12.3 * 3.6e6, 0.1 * 3.6e6)),
            Optional.of(new Estimate(5.14, 0.13)),
            Optional.of(new Estimate(0.11, 0.01)),
            Optional.of("measured by flow-heater"),
            Optional.of(FlowKnowledge.MEASURED)),
        Optional.empty(),
        Optional.empty(),
        Optional.of(
            new BypassFigures(
                minute(639),
                Optional.of(new Estimate(0.61, 0.015)),
                Optional.empty(),
                rig().heater().flowMinM3PerS(),
                rig().heater().flowMaxM3PerS(),
                Optional.of(new Estimate(1.58, 0.03)),
                Optional.of(new Estimate(15_900, 400)),
                Optional.of(new Estimate(1.14, 0.03)),
                Optional.of(new Estimate(2.54, 0.06)),
                Optional.of(new Estimate(0.98, 0.02)))),
        PoolFigures.NONE,
        Optional.empty(),
        List.of(steady(35, 288, 15_300), steady(305, 378, 14_900), steady(480, 639, 14_400)),
        phases,
        List.of(
            new CycleFigures(
                new Cycle(
                    minute(21), OptionalLong.of(minute(380)), OptionalLong.of(minute(410)), true),
                Optional.of(new Estimate(3.2e8, 6e6)),
                1,
                Optional.of(new Estimate(6e7, 5e5)),
                Optional.of(new Estimate(5.3, 0.1)))),
        flags(),
        startup(),
        new Verdict(
            Side.CONTROL,
            0.8,
            List.of(
                new Reason.Sentence(
                    "Six starts in one hour while the water was below the set temperature"),
                new Reason.Sentence(
                    "Heat while running steadily is 0.96 ± 0.05 of the nameplate's")),
            List.of(
                "Clip a probe to the pool body to see whether the thermostat reads it rightly")),
        List.of(
            "pool heat balance: no water-pool probe; clip one at the pump suction",
            "cost: no [tariff] in the rig"),
        List.of(
            trace(Trace.Kind.RISE, minute -> phaseAt(minute).compressorRuns() ? 1.62 : 0),
            trace(Trace.Kind.HEAT, minute -> phaseAt(minute).compressorRuns() ? 15_200 : 0),
            trace(Trace.Kind.HEATER_SHARE, minute -> minute < 31 ? 0.41 : 0.61),
            trace(Trace.Kind.CONDENSING, minute -> 312.0),
            trace(Trace.Kind.EVAPORATING, minute -> 284.3)));
  }

  /**
   * The same findings with so many cycles, ten minutes each and twelve apart, the last going on
   * with a part of its heat unknown.
   */
  public static Findings withCycles(int count) {
    List<CycleFigures> cycles = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      boolean last = i + 1 == count;
      cycles.add(
          new CycleFigures(
              new Cycle(
                  minute(12 * i),
                  last ? OptionalLong.empty() : OptionalLong.of(minute(12 * i + 10)),
                  last ? OptionalLong.empty() : OptionalLong.of(minute(12 * (i + 1))),
                  i > 0),
              Optional.of(new Estimate(9e6, 2e5)),
              last ? 0.72 : 1,
              Optional.of(new Estimate(1.8e6, 1e4)),
              last ? Optional.empty() : Optional.of(new Estimate(5.0, 0.1))));
    }
    Findings night = findings();
    return with(night, night.endMs(), cycles, night.traces());
  }

  /** The same findings with traces that end at a minute. */
  public static Findings until(Findings night, double minute) {
    List<Trace> traces =
        night.traces().stream()
            .map(
                trace ->
                    new Trace(
                        trace.kind(),
                        trace.startMs(),
                        trace.stepMs(),
                        Arrays.copyOf(trace.values(), (int) (minute * 60_000 / STEP_MS) + 1)))
            .toList();
    return with(night, minute(minute), night.cycles(), traces);
  }

  /** The same findings with three cycles, and a COP that cannot be for a reason. */
  public static Findings doubted(String why) {
    Findings night = withCycles(3);
    return with(night, night.endMs(), Optional.of(why), night.cycles(), night.traces());
  }

  private static Findings with(
      Findings night, long endMs, List<CycleFigures> cycles, List<Trace> traces) {
    return with(night, endMs, night.heatDoubt(), cycles, traces);
  }

  private static Findings with(
      Findings night,
      long endMs,
      Optional<String> heatDoubt,
      List<CycleFigures> cycles,
      List<Trace> traces) {
    return new Findings(
        night.run(),
        night.startMs(),
        endMs,
        night.channels(),
        night.heat(),
        heatDoubt,
        night.zero(),
        night.bypass(),
        night.pool(),
        night.cost(),
        night.steady(),
        night.phases(),
        cycles,
        night.flags(),
        night.startup(),
        night.verdict(),
        night.missing(),
        traces);
  }

  private interface Shape {
    double at(double minute);
  }

  private static Trace trace(Trace.Kind kind, Shape shape) {
    double[] values = new double[STEPS];
    Random random = new Random(7);
    for (int i = 0; i < STEPS; i++) {
      double minute = i * STEP_MS / 60e3;
      double value = shape.at(minute);
      values[i] =
          phaseAt(minute) == Phase.UNKNOWN || phaseAt(minute) == Phase.OFF
              ? Double.NaN
              : value * (1 + 0.01 * random.nextGaussian());
    }
    return new Trace(kind, START_MS, STEP_MS, values);
  }

  private static SteadySpan steady(double from, double to, double heatW) {
    return new SteadySpan(
        minute(from),
        minute(to),
        Optional.of(new Estimate(heatW, 350)),
        Optional.of(new Estimate(2710, 14)),
        Optional.of(new Estimate(heatW / 2710, 0.15)),
        Optional.of(new Estimate(1.58, 0.03)),
        Optional.of(new Estimate(140e-3 / 60, 1.4e-3 / 60)),
        Optional.of(new Estimate(0.61, 0.015)),
        OptionalDouble.of(299.6),
        OptionalDouble.of(291.2),
        Optional.of(new Estimate(15_900, 400)),
        Optional.of(new Estimate(2700, 70)),
        Optional.of(new Estimate(heatW / 15_900, 0.025)),
        OptionalDouble.of(312.05),
        OptionalDouble.of(284.35),
        OptionalDouble.of(5.0),
        OptionalDouble.of(4.0),
        OptionalDouble.of(10.9),
        OptionalDouble.of(6.9),
        OptionalDouble.empty());
  }

  private static List<Flag> flags() {
    return List.of(
        new Flag(
            "low-heater-flow",
            Side.WATER,
            Severity.ALARM,
            minute(21),
            minute(31),
            "Flow 62 L/min is below the heater's 90 L/min minimum for 10 min",
            List.of("bypass open too far", "loaded strainer"),
            "Open the bypass towards the heater or check the strainer."),
        new Flag(
            "short-cycling",
            Side.CONTROL,
            Severity.WARNING,
            minute(410),
            minute(470),
            "6 starts in 60 min, shortest rest 300 s",
            List.of("thermostat differential too small", "flow switch chatters"),
            "Watch the flow switch while the pump runs; compare the set temperature with the water."),
        new Flag(
            "data-gap",
            Side.MEASUREMENT,
            Severity.INFO,
            minute(380),
            minute(410),
            "No readings for 30 min",
            List.of("supply of the logger cut"),
            "See that the logger's plug sits firmly."));
  }

  private static List<StartupCheck> startup() {
    List<StartupCheck> checks = new ArrayList<>();
    for (StartupCheck.Item item : StartupCheck.Item.values()) {
      StartupCheck.Result result =
          switch (item) {
            case HEATER_FLOW -> StartupCheck.Result.FAIL;
            case VOLTAGE -> StartupCheck.Result.NOT_MEASURED;
            case FLOW_LOSS_STOP, SETPOINT_STOP -> StartupCheck.Result.NOT_SEEN;
            default -> StartupCheck.Result.PASS;
          };
      String evidence =
          switch (result) {
            case PASS -> "1.52 to 2.31 MPa in 140 s";
            case FAIL -> "62 L/min through the heater; the nameplate asks for 90 to 200 L/min";
            case NOT_SEEN -> "did not happen in this run";
            case NOT_MEASURED -> "clip a voltage probe";
          };
      checks.add(
          new StartupCheck(
              item,
              result,
              evidence,
              result == StartupCheck.Result.PASS
                  ? OptionalLong.of(minute(24 + checks.size()))
                  : OptionalLong.empty()));
    }
    return checks;
  }
}
