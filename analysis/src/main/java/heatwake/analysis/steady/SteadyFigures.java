package heatwake.analysis.steady;

import heatwake.analysis.air.Atmosphere;
import heatwake.analysis.circuit.Circuit;
import heatwake.analysis.circuit.Condensate;
import heatwake.analysis.electric.ElectricSum;
import heatwake.analysis.electric.Electricity;
import heatwake.analysis.expected.Conditions;
import heatwake.analysis.expected.EnteringAir;
import heatwake.analysis.expected.Nameplate;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.flow.FlowBasis;
import heatwake.analysis.heat.HeatBalance;
import heatwake.analysis.heat.HeatSum;
import heatwake.analysis.heat.WaterSide;
import heatwake.analysis.heat.Windows;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Rig;
import heatwake.analysis.steady.SteadyFinder.Span;
import heatwake.analysis.timeline.MovingMean;
import heatwake.analysis.timeline.Timeline;
import heatwake.analysis.uncertainty.Estimate;
import heatwake.analysis.uncertainty.Scatter;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Mean figures of steady spans. */
public final class SteadyFigures {
  /** Standard uncertainties between a figure and a limit that it lies beyond without doubt. */
  private static final double SURELY = 3;

  private final Timeline timeline;
  private final Rig rig;
  private final WaterSide water;
  private final Electricity electricity;
  private final Circuit circuit;
  private final Optional<Nameplate> nameplate;
  private final double[] riseK;

  public SteadyFigures(
      Timeline timeline, Rig rig, WaterSide water, Electricity electricity, Circuit circuit) {
    this.timeline = timeline;
    this.rig = rig;
    this.water = water;
    this.electricity = electricity;
    this.circuit = circuit;
    this.nameplate = Nameplate.of(rig);
    this.riseK = water.riseK();
  }

  /** Figures of one span. */
  public SteadySpan of(Span span) {
    Optional<Estimate> heat = heat(span);
    Optional<Estimate> power = power(span);
    Optional<Conditions> conditions = Conditions.of(timeline, rig, span.from(), span.to());
    Optional<Estimate> expected = nameplate.flatMap(plate -> conditions.map(plate::heatW));
    OptionalDouble condensing = mean(circuit.condensingK(), span);
    OptionalDouble evaporating = mean(circuit.evaporatingK(), span);
    OptionalDouble air =
        EnteringAir.of(timeline, rig, span.from(), span.to())
            .map(one -> OptionalDouble.of(one.temperatureK().value()))
            .orElseGet(OptionalDouble::empty);
    return new SteadySpan(
        timeline.timeMs(span.from()),
        timeline.timeMs(span.to() - 1),
        heat,
        power,
        HeatBalance.of(
                water.heat(),
                electricity.power(),
                List.of(new Windows.Window(span.from(), span.to())),
                timeline.stepS())
            .cop()
            .map(cop -> widened(cop, span)),
        rise(span),
        water.heaterFlowM3PerS(span.from(), span.to()),
        water.share().flatMap(share -> share.over(span.from(), span.to())),
        mean(timeline.of(Channel.WATER_IN), span),
        air,
        expected,
        nameplate.flatMap(plate -> conditions.flatMap(plate::powerW)),
        heat.flatMap(got -> expected.map(got::dividedBy)).filter(this::isEvidence),
        condensing,
        evaporating,
        mean(circuit.superheatK(), span),
        mean(circuit.subcoolingK(), span),
        difference(condensing, mean(timeline.of(Channel.WATER_OUT), span)),
        difference(air, evaporating),
        condensate(span, heat, power));
  }

  private Optional<Estimate> heat(Span span) {
    return water
        .heat()
        .map(stream -> new HeatSum(stream).add(span.from(), span.to()))
        .filter(sum -> !sum.isEmpty())
        .map(HeatSum::meanW)
        .map(mean -> widened(mean, span));
  }

  /** A heat, or a figure in proportion to it, with what is under way at either end of the span. */
  private Estimate widened(Estimate figure, Span span) {
    return water
        .heat()
        .map(stream -> HeatUnderWay.widen(figure, stream.heatW(), span, timeline.stepS()))
        .orElse(figure);
  }

  /**
   * Where no meter tells the flow, heat comes from what the nameplate lets expect and cannot bear
   * the nameplate out. It can still tell that no flow that is possible would make it enough.
   */
  private boolean isEvidence(Estimate ratio) {
    return water.flow().filter(FlowBasis::isMeasured).isPresent()
        || ratio.value() + SURELY * ratio.standard() < 1;
  }

  private Optional<Estimate> power(Span span) {
    return electricity
        .power()
        .map(stream -> new ElectricSum(stream).add(span.from(), span.to()))
        .filter(sum -> !sum.isEmpty())
        .map(ElectricSum::meanW);
  }

  private Optional<Estimate> rise(Span span) {
    Estimate seen = Scatter.mean(riseK, span.from(), span.to());
    return water
        .pair()
        .filter(pair -> !Double.isNaN(seen.value()))
        .map(
            pair ->
                new Estimate(
                    seen.value(), Math.hypot(seen.standard(), pair.ofRiseK(seen.value()))));
  }

  private OptionalDouble condensate(Span span, Optional<Estimate> heat, Optional<Estimate> power) {
    OptionalDouble in = mean(timeline.of(Channel.AIR_IN), span);
    OptionalDouble out = mean(timeline.of(Channel.AIR_OUT), span);
    OptionalDouble humidity = mean(timeline.of(Channel.HUMIDITY_IN), span);
    if (heat.isEmpty() || power.isEmpty() || in.isEmpty() || out.isEmpty() || humidity.isEmpty()) {
      return OptionalDouble.empty();
    }
    double rate =
        Condensate.kgPerS(
            heat.get().value(),
            power.get().value(),
            in.getAsDouble(),
            humidity.getAsDouble(),
            out.getAsDouble(),
            Atmosphere.standard(rig.site().altitudeM()));
    return Double.isNaN(rate) ? OptionalDouble.empty() : OptionalDouble.of(rate);
  }

  private static OptionalDouble difference(OptionalDouble minuend, OptionalDouble subtrahend) {
    return minuend.isPresent() && subtrahend.isPresent()
        ? OptionalDouble.of(minuend.getAsDouble() - subtrahend.getAsDouble())
        : OptionalDouble.empty();
  }

  private static OptionalDouble mean(double[] values, Span span) {
    double mean = MovingMean.once(values, span.from(), span.to());
    return Double.isNaN(mean) ? OptionalDouble.empty() : OptionalDouble.of(mean);
  }
}
