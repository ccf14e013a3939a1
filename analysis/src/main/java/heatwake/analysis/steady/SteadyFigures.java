package heatwake.analysis.steady;

import heatwake.analysis.electric.ElectricSum;
import heatwake.analysis.electric.Electricity;
import heatwake.analysis.finding.SteadySpan;
import heatwake.analysis.heat.HeatBalance;
import heatwake.analysis.heat.HeatSum;
import heatwake.analysis.heat.WaterSide;
import heatwake.analysis.heat.Windows;
import heatwake.analysis.quantity.Channel;
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
  private final Timeline timeline;
  private final WaterSide water;
  private final Electricity electricity;
  private final double[] riseK;

  public SteadyFigures(Timeline timeline, WaterSide water, Electricity electricity) {
    this.timeline = timeline;
    this.water = water;
    this.electricity = electricity;
    this.riseK = water.riseK(timeline);
  }

  /** Figures of one span. */
  public SteadySpan of(Span span) {
    Optional<Estimate> heat =
        water
            .heat()
            .map(stream -> new HeatSum(stream).add(span.from(), span.to()))
            .filter(sum -> !sum.isEmpty())
            .map(HeatSum::meanW);
    Optional<Estimate> power =
        electricity
            .power()
            .map(stream -> new ElectricSum(stream).add(span.from(), span.to()))
            .filter(sum -> !sum.isEmpty())
            .map(ElectricSum::meanW);
    Optional<Estimate> cop =
        HeatBalance.of(
                water.heat(),
                electricity.power(),
                List.of(new Windows.Window(span.from(), span.to())),
                timeline.stepS())
            .cop();
    return new SteadySpan(
        timeline.timeMs(span.from()),
        timeline.timeMs(span.to() - 1),
        heat,
        power,
        cop,
        rise(span),
        water.heaterFlowM3PerS(span.from(), span.to()),
        water.share().flatMap(share -> share.over(span.from(), span.to())),
        mean(Channel.WATER_IN, span),
        mean(SteadySpans.airChannel(timeline), span),
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty(),
        OptionalDouble.empty());
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

  private OptionalDouble mean(Channel channel, Span span) {
    double mean = new MovingMean(timeline.of(channel)).mean(span.from(), span.to());
    return Double.isNaN(mean) ? OptionalDouble.empty() : OptionalDouble.of(mean);
  }
}
