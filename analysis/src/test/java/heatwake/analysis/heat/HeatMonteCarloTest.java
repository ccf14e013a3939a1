package heatwake.analysis.heat;

import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.Analysis;
import heatwake.analysis.finding.Findings;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.analysis.site.ReadingUncertainty;
import heatwake.analysis.site.Rig;
import heatwake.analysis.uncertainty.Estimate;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Propagation of distributions (JCGM 101:2008): runs of known truth are measured with probes whose
 * errors are drawn from the uncertainties that the rig states, and the whole analysis is put over
 * them. Its expanded intervals (k = 2, nominally 95.4 %) have to hold the truth about that often:
 * neither 80 nor 100 %.
 */
class HeatMonteCarloTest {
  private static final int TRIALS = 1500;

  /** 95.4 % within three standard errors of 1500 trials (0.54 %), and no wider than 93 to 97. */
  private static final double LEAST = 0.935;

  private static final double MOST = 0.97;

  private static final int EVERY_S = 10;
  private static final double U_TEMPERATURE_K = 0.1;
  private static final double U_FLOW_SHARE = 0.02;
  private static final double U_POWER_SHARE = 0.01;
  private static final double NOISE_K = 0.05;
  private static final double NOISE_FLOW_SHARE = 0.02;

  /** What a run is like. */
  enum Kind {
    /** Water circulates for half an hour before and after: the pair is zeroed. */
    ZEROED(1800, true),
    /** The pump starts with the compressor: no zero can be taken. */
    NOT_ZEROED(0, true),
    /** No flow meter at the heater: total flow and the mixing balance at the return. */
    BY_MIXING(1800, false);

    private final int circulatingS;
    private final boolean heaterMeter;

    Kind(int circulatingS, boolean heaterMeter) {
      this.circulatingS = circulatingS;
      this.heaterMeter = heaterMeter;
    }
  }

  @ParameterizedTest
  @EnumSource(Kind.class)
  void statedIntervalsHoldTheTruthAsOftenAsTheySay(Kind kind) {
    Random random = new Random(20310504);
    int delivered = 0;
    int cop = 0;
    int steady = 0;
    double share = 0;
    for (int trial = 0; trial < TRIALS; trial++) {
      Trial one = new Trial(kind, random);
      Findings findings = Analysis.of(one.recording());
      Estimate heat = findings.heat().deliveredJ().orElseThrow();
      delivered += holds(heat, one.heatJ) ? 1 : 0;
      cop += holds(findings.heat().cop().orElseThrow(), one.heatJ / one.electricJ) ? 1 : 0;
      steady += holds(findings.steady().get(0).heatW().orElseThrow(), one.steadyW) ? 1 : 0;
      share += heat.expanded() / heat.value() / TRIALS;
    }
    System.out.printf(
        Locale.ROOT,
        "%s: delivered %.1f %%, COP %.1f %%, steady heat %.1f %% of %d; mean U of heat %.1f %%%n",
        kind,
        100.0 * delivered / TRIALS,
        100.0 * cop / TRIALS,
        100.0 * steady / TRIALS,
        TRIALS,
        100 * share);
    assertThat((double) delivered / TRIALS).as("delivered").isBetween(LEAST, MOST);
    assertThat((double) cop / TRIALS).as("COP").isBetween(LEAST, MOST);
    assertThat((double) steady / TRIALS).as("steady heat").isBetween(LEAST, MOST);
  }

  private static boolean holds(Estimate estimate, double truth) {
    return Math.abs(estimate.value() - truth) <= estimate.expanded();
  }

  /** One run with its truth and its errors. */
  private static final class Trial {
    /** Heat per volume and kelvin, IF97 at 0.17 MPa and 26 to 29 Cel, meter in the inlet. */
    private static final double K_J_PER_M3_K = 4.1668e6;

    private static final double FLOW_M3_PER_S = 100e-3 / 60;
    private static final double SHARE = 0.6;
    private static final double FULL_RISE_K = 2.4;
    private static final double TIME_CONSTANT_S = 60;
    private static final int HEATING_S = 5400;
    private static final int OFF_S = 600;

    private final Random random;
    private final Map<Channel, Series.Builder> readings = new EnumMap<>(Channel.class);
    private final double heatJ;
    private final double electricJ;
    private final double steadyW = FLOW_M3_PER_S * FULL_RISE_K * K_J_PER_M3_K;

    private Trial(Kind kind, Random random) {
      this.random = random;
      double offsetIn = random.nextGaussian() * U_TEMPERATURE_K;
      double offsetOut = random.nextGaussian() * U_TEMPERATURE_K;
      double offsetReturn = random.nextGaussian() * U_TEMPERATURE_K;
      // What a zero cannot take away, as the method states it; part of the offset otherwise.
      boolean zeroed = kind.circulatingS > 0;
      double remainderIn = zeroed ? random.nextGaussian() * 0.1 * U_TEMPERATURE_K : 0;
      double remainderOut = zeroed ? random.nextGaussian() * 0.1 * U_TEMPERATURE_K : 0;
      double remainderReturn = zeroed ? random.nextGaussian() * 0.1 * U_TEMPERATURE_K : 0;
      double gain = zeroed ? 1 + random.nextGaussian() * 0.005 : 1;
      double flowError = 1 + random.nextGaussian() * U_FLOW_SHARE;
      double powerError = 1 + random.nextGaussian() * U_POWER_SHARE;
      int start = OFF_S + kind.circulatingS;
      int stop = start + HEATING_S;
      int end = stop + Math.max(kind.circulatingS, 240) + OFF_S;
      double heat = 0;
      double electric = 0;
      for (int s = 0; s <= end; s += EVERY_S) {
        boolean runs = s >= start && s < stop;
        boolean moves = s >= OFF_S && s < end - OFF_S;
        double in = 273.15 + 26 + 0.3 * s / 3600;
        double rise = rise(s, start, stop);
        double loaded = runs ? 1 : 0;
        double flow = moves ? FLOW_M3_PER_S : 0;
        double power = runs ? 2600 : 10;
        if (s >= start && s < stop + 180) {
          heat += flow * rise * K_J_PER_M3_K * EVERY_S;
          electric += power * EVERY_S;
        }
        read(Channel.WATER_IN, s, in + offsetIn + loaded * remainderIn + noise(NOISE_K));
        read(
            Channel.WATER_OUT,
            s,
            in + rise * gain + offsetOut + loaded * remainderOut + noise(NOISE_K));
        if (kind.heaterMeter) {
          read(Channel.FLOW_HEATER, s, flow * (flowError + noise(NOISE_FLOW_SHARE)));
        } else {
          read(Channel.FLOW_TOTAL, s, flow / SHARE * (flowError + noise(NOISE_FLOW_SHARE)));
          read(
              Channel.WATER_RETURN,
              s,
              in + rise * SHARE * gain + offsetReturn + loaded * remainderReturn + noise(NOISE_K));
        }
        read(Channel.POWER, s, power * powerError);
      }
      heatJ = heat;
      electricJ = electric;
    }

    private static double rise(int s, int start, int stop) {
      if (s < start) {
        return 0;
      }
      double grown = 1 - Math.exp(-(double) (Math.min(s, stop) - start) / TIME_CONSTANT_S);
      double faded = s > stop ? Math.exp(-(double) (s - stop) / TIME_CONSTANT_S) : 1;
      return FULL_RISE_K * grown * faded;
    }

    private double noise(double standardDeviation) {
      return random.nextGaussian() * standardDeviation;
    }

    private void read(Channel channel, int s, double value) {
      readings.computeIfAbsent(channel, Series::of).add(s * 1000L, value);
    }

    private Recording recording() {
      Map<Channel, Series> series = new EnumMap<>(Channel.class);
      readings.forEach((channel, builder) -> series.put(channel, builder.build()));
      long endMs = series.get(Channel.WATER_IN).timeMs(series.get(Channel.WATER_IN).size() - 1);
      return new Recording(1, rig(), 0, endMs, series, List.of(), List.of());
    }

    private static Rig rig() {
      Rig rig = Rigs.bare();
      for (Channel channel : List.of(Channel.WATER_IN, Channel.WATER_OUT, Channel.WATER_RETURN)) {
        rig = Rigs.withProbe(rig, channel, new ReadingUncertainty.Absolute(U_TEMPERATURE_K));
      }
      for (Channel channel : List.of(Channel.FLOW_HEATER, Channel.FLOW_TOTAL)) {
        rig = Rigs.withProbe(rig, channel, new ReadingUncertainty.Relative(U_FLOW_SHARE));
      }
      return Rigs.withProbe(rig, Channel.POWER, new ReadingUncertainty.Relative(U_POWER_SHARE));
    }
  }
}
