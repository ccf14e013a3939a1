package heatwake.collector.soak;

/** The recorder is stopped as a service manager does, and started again. */
final class RecorderStopped implements Fault {
  @Override
  public String name() {
    return "recorder stopped";
  }

  @Override
  public boolean costsLines() {
    return true;
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    site.recorder().stop();
    site.pause(1000);
    site.recorder().start();
  }
}
