package heatwake.collector.mqtt;

import org.eclipse.paho.client.mqttv3.MqttConnectOptions;

/** How an MQTT 3.1.1 client gets into a broker. */
final class Mqtt311Options {
  private Mqtt311Options() {}

  /** Options for a new connection; the session is for the caller to choose. */
  static MqttConnectOptions of(BrokerAccess access) {
    MqttConnectOptions options = new MqttConnectOptions();
    options.setMqttVersion(MqttConnectOptions.MQTT_VERSION_3_1_1);
    options.setAutomaticReconnect(false);
    options.setConnectionTimeout(BrokerAccess.CONNECT_TIMEOUT_S);
    options.setKeepAliveInterval(BrokerAccess.KEEP_ALIVE_S);
    access.tls().ifPresent(options::setSocketFactory);
    access
        .credentials()
        .ifPresent(
            known -> {
              options.setUserName(known.user());
              options.setPassword(known.password().toCharArray());
            });
    return options;
  }
}
