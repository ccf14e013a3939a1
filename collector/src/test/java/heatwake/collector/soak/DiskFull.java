package heatwake.collector.soak;

import heatwake.collector.peer.Eventually;

/** There is no room left on the disk of the database, and then there is again. */
final class DiskFull implements Fault {
  private static final String FULL = "the disk is full";

  @Override
  public String name() {
    return "disk full";
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    long before = site.recorder().said(FULL);
    site.disk().fill();
    // What the log file has taken already can be written again: it may be a while until it hurts.
    Eventually.that("the disk is full", () -> site.recorder().said(FULL) > before);
    site.pause(4000);
    site.disk().free();
  }
}
