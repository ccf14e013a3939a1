package heatwake.collector.soak;

/** The recorder's process is killed (SIGKILL) and started again. */
final class RecorderKilled implements Fault {
  @Override
  public String name() {
    return "recorder killed";
  }

  @Override
  public boolean costsLines() {
    return true;
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    site.recorder().kill();
    site.recorder().start();
  }
}
