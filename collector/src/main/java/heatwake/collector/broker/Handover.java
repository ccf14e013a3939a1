package heatwake.collector.broker;

/**
 * How a client handed a message to the broker.
 *
 * @param client its id
 * @param sessions how many sessions it had begun anew in this broker
 * @param packetId identifier that it gave the message
 * @param again whether it says that it may have sent it before
 */
record Handover(String client, int sessions, int packetId, boolean again) {}
