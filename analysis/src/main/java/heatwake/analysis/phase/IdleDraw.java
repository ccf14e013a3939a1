package heatwake.analysis.phase;

import java.util.Optional;

/**
 * Draw above the threshold for the compressor that is none: a level held for long of which nothing
 * comes, neither lift nor heat. It is a fan that draws much, as one that thaws the coil alone; or
 * another load on the heater's meter, mostly the pool pump. {@link IdleDrawSearch} finds it.
 *
 * @param rest draw of the heater at rest with another load, if there is one
 * @param most the most that is held without a compressor
 */
record IdleDraw(Optional<Double> rest, double most) {}
