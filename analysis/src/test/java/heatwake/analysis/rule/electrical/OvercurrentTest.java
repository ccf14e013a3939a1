package heatwake.analysis.rule.electrical;

import static heatwake.analysis.rule.RuleAssert.assertClear;
import static heatwake.analysis.rule.RuleAssert.onlyFlag;
import static heatwake.analysis.rule.RuleAssert.readings;
import static heatwake.analysis.rule.RuleAssert.reason;
import static org.assertj.core.api.Assertions.assertThat;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.scenario.Rigs;
import heatwake.analysis.scenario.RunBuilder;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The typical rig: 16 A nameplate, 20 A breaker, clamp with a standard uncertainty of 1 %. */
class OvercurrentTest {
  private final Overcurrent rule = new Overcurrent();

  private static RunBuilder drawing(double ampere, double minutes) {
    return RunBuilder.run()
        .heatingAt(Channel.CURRENT, ampere)
        .circulating(2)
        .heating(minutes)
        .circulating(2);
  }

  @Test
  void aboveTheNameplate() {
    assertThat(onlyFlag(rule, readings(drawing(17.6, 20).recording())).evidence())
        .isEqualTo("17.6 A for 20 min; the nameplate allows 16.0 A");
  }

  @Test
  void theFlagCoversTheTimeAboveTheLimit() {
    RunBuilder run = RunBuilder.run().heatingAt(Channel.CURRENT, 14).circulating(2).heating(20);
    long fromMs = run.nowMs();
    run.heatingAt(Channel.CURRENT, 19.3).heating(75);
    long toMs = run.nowMs();
    Flag flag =
        onlyFlag(rule, readings(run.heatingAt(Channel.CURRENT, 14).heating(20).recording()));

    assertThat(flag.evidence()).isEqualTo("19.3 A for 75 min; the nameplate allows 16.0 A");
    assertThat(flag.startMs()).isBetween(fromMs - 2_000, fromMs + 2_000);
    assertThat(flag.endMs()).isBetween(toMs - 2_000, toMs + 2_000);
  }

  /** A pool pump of 5 A on the clamped conductor is none of the heater's 16 A. */
  @Test
  void anotherLoadIsNotHeldAgainstTheNameplate() {
    RunBuilder.Change withPump = (atS, ampere) -> ampere + 5;
    RunBuilder run = RunBuilder.run().change(Channel.CURRENT, withPump);
    run.heatingAt(Channel.CURRENT, 14).circulating(5).heating(240).circulating(5);
    assertClear(rule, readings(run.recording()));
    run = RunBuilder.run().change(Channel.CURRENT, withPump);
    run.heatingAt(Channel.CURRENT, 17.6).circulating(5).heating(20).circulating(5);
    assertThat(onlyFlag(rule, readings(run.recording())).evidence())
        .isEqualTo(
            "17.5 A for 20 min, without the 5.1 A that another load takes with the heater at rest;"
                + " the nameplate allows 16.0 A");
  }

  /** A pump that never stops, with a heater that never rests, is all in one reading. */
  @Test
  void withoutALookAtRestTheSideStaysOpen() {
    Flag flag =
        onlyFlag(
            rule,
            readings(RunBuilder.run().heatingAt(Channel.CURRENT, 17.6).heating(60).recording()));
    assertThat(flag.side()).isEqualTo(Side.UNDECIDED);
    assertThat(flag.evidence())
        .endsWith(
            "the nameplate allows 16.0 A; the heater was not seen at rest, so another load on the"
                + " conductor, such as the pool pump, is not ruled out");
    RunBuilder seen = RunBuilder.run().heatingAt(Channel.CURRENT, 17.6).circulating(0.5);
    assertThat(onlyFlag(rule, readings(seen.heating(60).recording())).side())
        .isEqualTo(Side.ELECTRICAL);
    // While the pump rests too, its draw does not show.
    RunBuilder dry = RunBuilder.run().heatingAt(Channel.CURRENT, 17.6).off(10);
    assertThat(onlyFlag(rule, readings(dry.heating(60).recording())).side())
        .isEqualTo(Side.UNDECIDED);
  }

  @Test
  void withinTheUncertaintyOfTheClampItIsClear() {
    assertClear(rule, readings(drawing(17.2, 20).recording()));
    onlyFlag(rule, readings(drawing(17.6, 20).recording()));
  }

  @Test
  void anInrushIsClear() {
    RunBuilder run = RunBuilder.run().circulating(2).set(Channel.CURRENT, 60).heating(0.05);
    assertClear(rule, readings(run.free(Channel.CURRENT).heating(30).recording()));
  }

  @Test
  void anInrushThatASlowProbeHappensOnIsClear() {
    RunBuilder run = RunBuilder.run().every(60).circulating(5).set(Channel.CURRENT, 60).heating(1);
    assertClear(rule, readings(run.free(Channel.CURRENT).heating(30).recording()));
  }

  /** A log of changes keeps the reading of an inrush until the next is sent, which may be lost. */
  @Test
  void anInrushThatALogOfChangesHoldsIsClear() {
    assertClear(rule, readings(changesKept(1).recording()));
    onlyFlag(rule, readings(changesKept(3).recording()));
  }

  /** Sends 12 A with a dead band of 0.2 A; of the second start so many readings of 60 A alone. */
  private static RunBuilder changesKept(int ofInrush) {
    Random random = new Random(4);
    double startS = (2 + 60 + 20) * 60;
    double[] last = {Double.NaN, 0};
    RunBuilder run =
        RunBuilder.run()
            .heatingAt(Channel.CURRENT, 12)
            .change(
                Channel.CURRENT,
                (atS, value) -> {
                  if (atS >= startS && atS < startS + 360) {
                    return atS < startS + ofInrush ? 60 : Double.NaN;
                  }
                  double now = value + 0.15 * random.nextGaussian();
                  if (Math.abs(now - last[0]) < 0.2 && atS - last[1] < 900) {
                    return Double.NaN;
                  }
                  last[0] = now;
                  last[1] = atS;
                  return now;
                });
    return run.circulating(2).heating(60).circulating(20).heating(60).circulating(5);
  }

  /** NEC 210.20(A): the breaker carries 125 % of a continuous load, so 16 A on 20 A. */
  @Test
  void aContinuousLoadOnTheBreaker() {
    assertThat(
            onlyFlag(rule, readings(drawing(17, 200).rig(Rigs.breakerOnly()).recording()))
                .evidence())
        .isEqualTo("17.0 A over 3.0 h without a break; 80 % of the 20 A breaker is 16.0 A");
    assertClear(rule, readings(drawing(17, 170).rig(Rigs.breakerOnly()).recording()));
    assertClear(rule, readings(drawing(16.3, 200).rig(Rigs.breakerOnly()).recording()));
  }

  @Test
  void needsCurrentAndALimit() {
    assertThat(reason(rule, readings(drawing(17, 5).rig(Rigs.bare()).recording())))
        .isEqualTo("no heater.current-max and no heater.breaker in the rig");
    assertThat(reason(rule, readings(RunBuilder.run().only(Channel.POWER).heating(5).recording())))
        .isEqualTo("no current reading");
  }
}
