package heatwake.collector.soak;

/** The ends and the beginnings of lines get lost. */
final class HalfLines implements Fault {
  private static final int LINES = 20;

  @Override
  public String name() {
    return "half lines";
  }

  @Override
  public boolean costsLines() {
    return true;
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    // A beginning is followed by a whole line, an end stands alone: bytes lost within a number
    // would leave a line that looks whole, which nobody can tell from a good one.
    for (int i = 0; i < LINES; i++) {
      String line = site.serial().message(site.serial().last()) + "\n";
      int cut = 1 + site.random().nextInt(line.length() - 1);
      site.line()
          .send(
              site.random().nextBoolean()
                  ? line.substring(0, cut) + line
                  : "\n" + line.substring(cut));
    }
  }
}
