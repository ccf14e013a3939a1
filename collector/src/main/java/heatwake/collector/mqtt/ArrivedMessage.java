package heatwake.collector.mqtt;

/**
 * A message as the broker delivered it.
 *
 * @param packetId MQTT packet identifier; 0 where the broker wants no acknowledgement
 * @param retained whether the broker had kept it from before the subscription
 * @param duplicate whether the broker says that it may have delivered it before
 */
// The payload is never compared or printed: arrays in a record are safe here.
@SuppressWarnings("ArrayRecordComponent")
record ArrivedMessage(
    int packetId, String topic, byte[] payload, boolean retained, boolean duplicate) {

  /** Whether the broker waits for an acknowledgement. */
  boolean wantsAcknowledgement() {
    return packetId != 0;
  }
}
