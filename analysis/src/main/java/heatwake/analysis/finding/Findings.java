package heatwake.analysis.finding;

import heatwake.analysis.phase.PhaseSpan;
import heatwake.analysis.quantity.Channel;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;

/**
 * Everything an analysis found out about one run. Window, report, text and JSON are all made from
 * this. Values are SI; times UTC milliseconds.
 *
 * @param run number of the run
 * @param startMs first moment
 * @param endMs last moment
 * @param channels how well each channel was recorded
 * @param heat heat and energy of the run
 * @param heatDoubt why heat and COP of the run cannot be right, in words; empty if they can
 * @param zero how the temperature pair was zeroed; empty if it could not be
 * @param bypass what a person who sets the bypass needs; empty if the heater was not seen running
 * @param pool the pool as a second witness
 * @param cost what the heat costs; empty without a tariff
 * @param steady steady spans, in order
 * @param phases phases, in order, without a hole
 * @param cycles compressor cycles, in order, each with its heat and energy
 * @param flags rules that fired, the gravest first, then by time
 * @param startup start-up list, in its own order
 * @param verdict whose side it is on
 * @param missing what could not be computed and why, one sentence each
 * @param traces derived quantities over time
 */
public record Findings(
    long run,
    long startMs,
    long endMs,
    Map<Channel, ChannelCoverage> channels,
    HeatFigures heat,
    Optional<String> heatDoubt,
    Optional<ProbeZero> zero,
    Optional<BypassFigures> bypass,
    PoolFigures pool,
    Optional<CostFigures> cost,
    List<SteadySpan> steady,
    List<PhaseSpan> phases,
    List<CycleFigures> cycles,
    List<Flag> flags,
    List<StartupCheck> startup,
    Verdict verdict,
    List<String> missing,
    List<Trace> traces) {

  public Findings {
    steady = List.copyOf(steady);
    phases = List.copyOf(phases);
    cycles = List.copyOf(cycles);
    flags = List.copyOf(flags);
    startup = List.copyOf(startup);
    missing = List.copyOf(missing);
    traces = List.copyOf(traces);
  }

  /**
   * The same with every sentence said otherwise, such as in other units.
   *
   * @param said a sentence to that sentence
   */
  public Findings reworded(UnaryOperator<String> said) {
    return new Findings(
        run,
        startMs,
        endMs,
        channels,
        heat,
        heatDoubt.map(said),
        zero,
        bypass,
        pool,
        cost,
        steady,
        phases,
        cycles,
        flags.stream().map(flag -> flag.reworded(said)).toList(),
        startup.stream().map(check -> check.reworded(said)).toList(),
        verdict.reworded(said),
        missing.stream().map(said).toList(),
        traces);
  }
}
