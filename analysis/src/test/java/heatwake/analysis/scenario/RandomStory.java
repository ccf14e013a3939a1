package heatwake.analysis.scenario;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Recording;
import java.util.Random;

/** A short run of a heater drawn at random: what it does, how big it is, and how it is sampled. */
public final class RandomStory {
  private static final double LONGEST_MIN = 110;

  private RandomStory() {}

  /** The same seed gives the same run. */
  public static Recording of(long seed) {
    Random random = new Random(seed);
    RunBuilder run = RunBuilder.run().rig(random.nextBoolean() ? Rigs.typical() : Rigs.bare());
    run.with(
        Channel.WATER_RETURN,
        Channel.FLOW_TOTAL,
        Channel.PRESSURE_FILTER,
        Channel.HUMIDITY_IN,
        Channel.ENERGY);
    run.pool(18 + 12 * random.nextDouble()).air(-2 + 34 * random.nextDouble());
    double powerW = 500 + 7500 * random.nextDouble();
    run.heatingAt(Channel.POWER, powerW).heatingAt(Channel.CURRENT, powerW / 221);
    run.heatingAt(Channel.WATER_OUT, 0.4 + 4 * random.nextDouble());
    for (Channel channel :
        new Channel[] {Channel.WATER_IN, Channel.WATER_OUT, Channel.WATER_RETURN}) {
      run.noise(channel, random.nextBoolean() ? 0.03 : 0);
      run.resolution(channel, random.nextInt(3) == 0 ? 0.0625 : 0);
    }
    run.resolution(Channel.ENERGY, new double[] {0, 0.001, 0.01, 0.1}[random.nextInt(4)]);
    double minutes = 0;
    while (minutes < LONGEST_MIN * random.nextDouble() || minutes == 0) {
      minutes += state(run, random);
    }
    return new RoughSampling(random).of(run.recording());
  }

  private static double state(RunBuilder run, Random random) {
    double minutes = 30 * random.nextDouble() * random.nextDouble() + 0.05;
    switch (random.nextInt(7)) {
      case 0 -> run.off(minutes);
      case 1, 2 -> run.circulating(minutes);
      case 3 -> run.fan(minutes / 5);
      case 4 -> run.defrost(minutes / 4);
      default -> run.heating(minutes);
    }
    return minutes;
  }
}
