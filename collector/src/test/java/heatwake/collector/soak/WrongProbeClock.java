package heatwake.collector.soak;

import java.util.ArrayList;
import java.util.List;

/** A probe gives times that cannot be, or a year that is not this one. */
final class WrongProbeClock implements Fault {
  private static final List<String> TIMES =
      List.of("0", "86400000", "\"1970-01-01T00:00:09Z\"", "\"2199-12-31T23:59:59Z\"", "\"noon\"");

  @Override
  public String name() {
    return "probe's clock wrong";
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    List<String> messages = new ArrayList<>();
    List<Integer> numbers = new ArrayList<>();
    for (String time : TIMES) {
      int number = site.strays().next();
      numbers.add(number);
      messages.add("{\"v\":" + Strays.value(number) + ",\"at\":" + time + "}");
    }
    site.broker().publish("heron/air", messages);
    numbers.forEach(site.strays()::owe);
  }
}
