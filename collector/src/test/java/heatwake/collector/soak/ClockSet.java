package heatwake.collector.soak;

/** The logger's clock is set forward and back, by seconds to days, and at last right again. */
final class ClockSet implements Fault {
  private static final int MOST_S = 200_000;
  private static final int TIMES = 3;

  @Override
  public String name() {
    return "logger's clock set";
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    for (int i = 0; i < TIMES; i++) {
      site.clock().orElseThrow().set(site.random().nextInt(2 * MOST_S) - MOST_S);
      site.pause(1500);
    }
    site.clock().orElseThrow().set(0);
  }
}
