package heatwake.collector.soak;

/** Something that goes wrong, and is over again. */
interface Fault {
  /** What a person calls it. */
  String name();

  /** Whether lines sent meanwhile may get lost; nobody keeps them while the recorder is deaf. */
  default boolean costsLines() {
    return false;
  }

  /** Lets it happen; returns when its cause is gone, not when the recorder has got over it. */
  void strike(SoakedSite site) throws Exception;
}
