package heatwake.collector.recorder;

/**
 * How a recorder works.
 *
 * @param clock clocks it goes by
 * @param cut when runs are cut
 * @param readingsInMemory most readings kept while the database cannot be written
 */
public record RecorderSettings(RecorderClock clock, Cut cut, int readingsInMemory) {
  private static final int READINGS_IN_MEMORY = 200_000;

  /** By this machine's clock, never cut. */
  public static final RecorderSettings USUAL =
      new RecorderSettings(RecorderClock.SYSTEM, new Cut.Never(), READINGS_IN_MEMORY);

  public RecorderSettings with(RecorderClock other) {
    return new RecorderSettings(other, cut, readingsInMemory);
  }

  public RecorderSettings with(Cut other) {
    return new RecorderSettings(clock, other, readingsInMemory);
  }

  public RecorderSettings withReadingsInMemory(int most) {
    return new RecorderSettings(clock, cut, most);
  }
}
