package heatwake.analysis.electric;

import heatwake.analysis.timeline.Bridging;
import heatwake.analysis.uncertainty.ProbeUncertainty;

/**
 * Electric power of the heater at every instant.
 *
 * @param way how it was found, in words
 * @param powerW mean power from each instant to the next, short silences bridged
 * @param stepS time between instants
 * @param uncertainty systematic standard uncertainty of the power
 * @param noiseW scatter of one instant, spread so that sums over instants come out right
 * @param edgeJ standard uncertainty that each beginning or end of a sum adds, for a counter that
 *     speaks seldom or in coarse steps
 */
public record ElectricStream(
    String way,
    Bridging powerW,
    double stepS,
    ProbeUncertainty uncertainty,
    double noiseW,
    double edgeJ) {}
