package heatwake.collector.broker;

/**
 * A client that was not let in, and why.
 *
 * @param client what a person knows it by
 * @param reason what was wrong, with the mend where there is one
 * @param count how often
 * @param firstMs when first, UTC milliseconds
 * @param lastMs when last
 */
public record RefusedClient(String client, String reason, long count, long firstMs, long lastMs) {
  RefusedClient again(long nowMs) {
    return new RefusedClient(client, reason, count + 1, firstMs, nowMs);
  }
}
