package heatwake.collector.soak;

/** The serial adapter comes back as another device. */
final class CableElsewhere implements Fault {
  @Override
  public String name() {
    return "cable back under another device name";
  }

  @Override
  public boolean costsLines() {
    return true;
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    site.line().replugElsewhere();
  }
}
