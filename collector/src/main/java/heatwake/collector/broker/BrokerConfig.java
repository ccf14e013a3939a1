package heatwake.collector.broker;

import heatwake.collector.mistake.MistakeException;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Optional;

/**
 * How the broker is to listen.
 *
 * @param address address to listen on
 * @param port port; 0 for any that is free
 * @param users who may connect; empty to let anybody on this machine in
 */
public record BrokerConfig(
    String address, int port, Optional<BrokerUsers> users, BrokerLimits limits) {

  /** Address that only this machine reaches. */
  public static final String LOOPBACK = "127.0.0.1";

  private static final int HIGHEST_PORT = 65_535;

  /**
   * Checks that nobody gets in who should not.
   *
   * @throws MistakeException if it would listen beyond this machine without a password
   */
  public BrokerConfig {
    if (port < 0 || port > HIGHEST_PORT) {
      throw new MistakeException(
          "--broker=" + port + ": a port is a number from 1 to " + HIGHEST_PORT);
    }
    if (users.isEmpty() && !isLoopback(address)) {
      throw new MistakeException(
          "--broker-listen "
              + address
              + " lets other machines in, so it needs --broker-users FILE; heatwake broker-user"
              + " NAME makes a line of it");
    }
  }

  /** For this machine only, without users. */
  public static BrokerConfig loopback(int port) {
    return new BrokerConfig(LOOPBACK, port, Optional.empty(), BrokerLimits.SITE);
  }

  /** The same with other limits. */
  public BrokerConfig with(BrokerLimits others) {
    return new BrokerConfig(address, port, users, others);
  }

  private static boolean isLoopback(String address) {
    try {
      return InetAddress.getByName(address).isLoopbackAddress();
    } catch (UnknownHostException unknown) {
      throw new MistakeException(
          "--broker-listen " + address + ": this machine has no such address", unknown);
    }
  }
}
