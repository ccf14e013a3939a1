package heatwake.dashboard.demo.plant.sensor;

import heatwake.dashboard.demo.plant.Tap;

/**
 * A probe as bought and clipped.
 *
 * @param tap where it is clipped
 * @param stated standard uncertainty of one reading, as its data sheet states it, in the tap's unit
 *     or as a share
 * @param relative whether {@code stated} is a share of the reading
 * @param intervalS time between readings
 * @param jitter random part of the interval, a share of it; without any, all probes of one interval
 *     report together
 * @param lagS first-order lag
 * @param resolution smallest step it reports
 * @param lossRate part of its readings that never arrive
 * @param deadBand a reading that has changed by less since the last one is sent only every {@link
 *     Sensor#SIGN_OF_LIFE_S}; 0 where every reading is sent
 */
public record SensorSpec(
    Tap tap,
    double stated,
    boolean relative,
    double intervalS,
    double jitter,
    double lagS,
    double resolution,
    double lossRate,
    double deadBand) {}
