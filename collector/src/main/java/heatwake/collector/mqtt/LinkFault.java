package heatwake.collector.mqtt;

import java.io.EOFException;
import java.net.ConnectException;
import java.net.NoRouteToHostException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.security.cert.CertPathBuilderException;
import java.security.cert.CertificateException;
import java.security.cert.CertificateExpiredException;
import java.security.cert.CertificateNotYetValidException;
import javax.net.ssl.SSLException;

/** Says in plain words why a connection failed. */
final class LinkFault {
  /** What the client library calls a connection that broke before the broker answered. */
  private static final String PAHO_LOST = "Connection lost";

  private LinkFault() {}

  /** The words for a fault, found by what lies at the bottom of it. */
  static String words(Throwable fault) {
    for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
      if (cause instanceof CertificateException) {
        return certificate(cause);
      }
    }
    for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
      String known = known(cause);
      if (known != null) {
        return known;
      }
    }
    return fault.getMessage() == null || PAHO_LOST.equals(fault.getMessage())
        ? "the connection broke; is the port the broker's, and the address mqtts:// where it wants"
            + " encryption and mqtt:// where it does not?"
        : fault.getMessage();
  }

  /** RFC 5280 paths as Java checks them: no chain to a trusted authority, or the wrong name. */
  private static String certificate(Throwable fault) {
    for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
      if (cause instanceof CertPathBuilderException) {
        return "its certificate is not signed by the given authority (ca in the rig, else this"
            + " machine's)";
      }
      if (cause instanceof CertificateExpiredException) {
        return "its certificate has expired; check also this machine's clock";
      }
      if (cause instanceof CertificateNotYetValidException) {
        return "its certificate is not valid yet; check also this machine's clock";
      }
    }
    return "its certificate is not trusted (" + detail(fault) + ")";
  }

  private static String known(Throwable cause) {
    if (cause instanceof UnknownHostException) {
      return "no host of that name";
    }
    if (cause instanceof NoRouteToHostException) {
      return "no route to it";
    }
    if (cause instanceof ConnectException) {
      return "nobody listens there";
    }
    if (cause instanceof SocketTimeoutException) {
      return "no answer in time";
    }
    if (cause instanceof SSLException) {
      return "no encrypted connection (" + detail(cause) + ")";
    }
    return cause instanceof EOFException ? "the connection broke" : null;
  }

  private static String detail(Throwable cause) {
    return cause.getMessage() == null ? cause.getClass().getSimpleName() : cause.getMessage();
  }
}
