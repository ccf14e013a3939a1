package heatwake.dashboard.demo.plant.water;

/**
 * The pool itself.
 *
 * @param volumeM3 water in it
 * @param surfaceM2 open surface
 * @param covered whether a cover lies on it
 * @param startC temperature at the beginning
 */
public record Basin(double volumeM3, double surfaceM2, boolean covered, double startC) {}
