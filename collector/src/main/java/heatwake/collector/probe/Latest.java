package heatwake.collector.probe;

import java.util.LinkedHashMap;
import java.util.Map;

/** The latest entries of a map: one more than it holds, and the one put in first goes. */
public final class Latest<K, V> extends LinkedHashMap<K, V> {
  private static final long serialVersionUID = 1L;

  private final int most;

  /** A map of at most so many entries. */
  public Latest(int most) {
    this.most = most;
  }

  @Override
  protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
    return size() > most;
  }
}
