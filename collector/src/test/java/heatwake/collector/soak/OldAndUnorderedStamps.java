package heatwake.collector.soak;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** Readings come again, and new ones in no order. */
final class OldAndUnorderedStamps implements Fault {
  private static final int NEW = 20;
  private static final int OLD = 20;

  @Override
  public String name() {
    return "repeated and unordered stamps";
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    for (String line : shuffled(site, site.serial(), new ArrayList<>())) {
      site.line().send(line + "\n");
    }
    publish(site, "heron/out", site.mqtt3());
    publish(site, "heron/pool", site.mqtt5());
  }

  private static void publish(SoakedSite site, String topic, Tally tally) throws Exception {
    List<Integer> fresh = new ArrayList<>();
    List<String> messages = shuffled(site, tally, fresh);
    site.broker().publish(topic, messages);
    // It returns when the broker has acknowledged all of them.
    fresh.forEach(tally::owe);
  }

  private static List<String> shuffled(SoakedSite site, Tally tally, List<Integer> fresh) {
    List<String> messages = new ArrayList<>();
    for (int i = 0; i < OLD; i++) {
      messages.add(tally.message(site.random().nextInt(tally.last() + 1)));
    }
    for (int i = 0; i < NEW; i++) {
      int number = tally.next();
      fresh.add(number);
      messages.add(tally.message(number));
    }
    Collections.shuffle(messages, site.random());
    return messages;
  }
}
