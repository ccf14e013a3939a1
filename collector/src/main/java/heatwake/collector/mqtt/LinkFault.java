package heatwake.collector.mqtt;

import java.io.EOFException;
import java.net.ConnectException;
import java.net.NoRouteToHostException;
import java.net.SocketTimeoutException;
import java.net.UnknownHostException;
import java.security.cert.CertificateException;
import javax.net.ssl.SSLException;

/** Says in plain words why a connection failed. */
final class LinkFault {
  private LinkFault() {}

  /** The words for a fault, found by what lies at the bottom of it. */
  static String words(Throwable fault) {
    for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
      if (cause instanceof CertificateException) {
        return "its certificate is not trusted (" + detail(cause) + ")";
      }
    }
    for (Throwable cause = fault; cause != null; cause = cause.getCause()) {
      String known = known(cause);
      if (known != null) {
        return known;
      }
    }
    return detail(fault);
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
