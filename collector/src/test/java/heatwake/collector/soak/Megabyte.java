package heatwake.collector.soak;

/** A message of a megabyte. */
final class Megabyte implements Fault {
  @Override
  public String name() {
    return "a megabyte";
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    site.broker().publishFile("heron/out", new byte[1_000_000]);
    site.broker().publishFile("heron/pool", new byte[1_000_000]);
  }
}
