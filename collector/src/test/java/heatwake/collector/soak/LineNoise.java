package heatwake.collector.soak;

/** Any bytes come over the serial line. */
final class LineNoise implements Fault {
  @Override
  public String name() {
    return "noise on the line";
  }

  @Override
  public boolean costsLines() {
    return true;
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    byte[] noise = new byte[site.random().nextInt(20_000)];
    site.random().nextBytes(noise);
    site.line().send(noise);
    site.line().send("\n");
  }
}
