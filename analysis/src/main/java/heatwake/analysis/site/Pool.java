package heatwake.analysis.site;

import java.util.OptionalDouble;

/**
 * The pool.
 *
 * @param volumeM3 water volume
 * @param surfaceM2 free surface
 * @param covered whether it is covered when nobody bathes
 * @param saltKgPerKg salt in the water by mass, zero in a fresh-water pool
 * @param setpointK set temperature
 */
public record Pool(
    OptionalDouble volumeM3,
    OptionalDouble surfaceM2,
    boolean covered,
    double saltKgPerKg,
    OptionalDouble setpointK) {

  /** A pool of which the rig says nothing. */
  public static final Pool UNKNOWN =
      new Pool(OptionalDouble.empty(), OptionalDouble.empty(), false, 0, OptionalDouble.empty());
}
