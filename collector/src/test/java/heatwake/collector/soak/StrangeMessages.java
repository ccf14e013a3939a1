package heatwake.collector.soak;

import java.util.List;

/** Messages that are no readings. */
final class StrangeMessages implements Fault {
  @Override
  public String name() {
    return "strange messages";
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    site.broker().publish("heron/out", List.of("warm", "{\"v\":", "{\"v\":{}}", "\u0001", ""));
    site.broker().publishFile("heron/pool", new byte[100_000]);
  }
}
