package heatwake.collector.broker;

/** What the broker has to tell besides messages. */
interface BrokerEvents {
  /** Before anybody listens. */
  BrokerEvents UNHEARD =
      new BrokerEvents() {
        @Override
        public void refused(String client, String reason) {}

        @Override
        public void flooded(String what) {}

        @Override
        public void failed(String what) {}
      };

  /**
   * A client was not let in.
   *
   * @param client what a person knows it by
   * @param reason what was wrong
   */
  void refused(String client, String reason);

  /** A client sends too much. */
  void flooded(String what);

  /** Something broke inside. */
  void failed(String what);
}
