package heatwake.dashboard.demo.plant;

import heatwake.dashboard.demo.plant.machine.Controller;
import java.util.ArrayList;
import java.util.List;

/** What really happened, second by second, for comparison with what was found. */
public final class Truth {
  /** What the heater did. */
  public enum Doing {
    OFF,
    CIRCULATING,
    FAN,
    COMPRESSOR,
    DEFROST
  }

  /** Heat counts until this long after a compressor stop. */
  private static final double RUN_ON_S = 180;

  private final double stepS;
  private final Doing[] doing;
  private final float[] heatW;
  private final float[] powerW;
  private final List<Double> startsS = new ArrayList<>();
  private final List<Double> stopsS = new ArrayList<>();
  private int size;
  private double sinceStopS = 1e9;
  private boolean ran;
  private double deliveredJ;
  private double electricJ;
  private double electricTotalJ;

  /** Room for a run of a length, kept in steps. */
  public Truth(double runS, double stepS) {
    int steps = (int) Math.ceil(runS / stepS) + 1;
    this.stepS = stepS;
    this.doing = new Doing[steps];
    this.heatW = new float[steps];
    this.powerW = new float[steps];
  }

  /** Takes note of a moment. */
  public void note(Plant plant) {
    boolean runs = plant.compressorRuns();
    boolean fan = plant.fanRuns();
    boolean flows = plant.totalFlowM3PerS() > 0.1 * plant.design().circuit().totalM3PerS();
    if (runs && !ran) {
      startsS.add(plant.timeS());
    }
    if (!runs && ran) {
      stopsS.add(plant.timeS());
    }
    sinceStopS = runs ? 0 : ran ? stepS : sinceStopS + stepS;
    ran = runs;
    if (sinceStopS <= RUN_ON_S && !startsS.isEmpty()) {
      deliveredJ += plant.heatW() * stepS;
      electricJ += plant.supply().powerW() * stepS;
    }
    electricTotalJ += plant.supply().powerW() * stepS;
    boolean defrosts = plant.controller().stage() == Controller.Stage.DEFROST;
    doing[size] =
        defrosts
            ? Doing.DEFROST
            : runs ? Doing.COMPRESSOR : fan ? Doing.FAN : flows ? Doing.CIRCULATING : Doing.OFF;
    heatW[size] = (float) plant.heatW();
    powerW[size] = (float) plant.supply().powerW();
    size++;
  }

  /** Time between the moments kept. */
  public double stepS() {
    return stepS;
  }

  /** Number of moments kept. */
  public int size() {
    return size;
  }

  /** What the heater did at a moment. */
  public Doing doing(int i) {
    return doing[i];
  }

  /** Compressor starts, seconds into the run. */
  public List<Double> startsS() {
    return List.copyOf(startsS);
  }

  /** Compressor stops, seconds into the run. */
  public List<Double> stopsS() {
    return List.copyOf(stopsS);
  }

  /** Heat from each compressor start until three minutes after it stops. */
  public double deliveredJ() {
    return deliveredJ;
  }

  /** Electric energy over the same time. */
  public double electricJ() {
    return electricJ;
  }

  /** Electric energy over the whole run. */
  public double electricTotalJ() {
    return electricTotalJ;
  }

  /** Mean heat between two moments of the run. */
  public double meanHeatW(double fromS, double toS) {
    return mean(heatW, fromS, toS);
  }

  /** Mean electric power between two moments of the run. */
  public double meanPowerW(double fromS, double toS) {
    return mean(powerW, fromS, toS);
  }

  private double mean(float[] values, double fromS, double toS) {
    int from = (int) Math.max(0, fromS / stepS);
    int to = (int) Math.min(size, toS / stepS);
    double sum = 0;
    for (int i = from; i < to; i++) {
      sum += values[i];
    }
    return sum / Math.max(1, to - from);
  }
}
