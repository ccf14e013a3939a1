package heatwake.collector.mqtt;

import heatwake.collector.mistake.SettingException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateException;
import java.security.cert.CertificateFactory;
import java.util.Collection;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocketFactory;
import javax.net.ssl.TrustManagerFactory;

/** TLS that trusts the authorities of a PEM file, or those of the machine. */
final class TrustedAuthority {
  private TrustedAuthority() {}

  /**
   * Sockets that trust the certificates in {@code ca} and no others; the machine's where there is
   * none.
   *
   * @throws SettingException if the file cannot be read or holds no certificate
   */
  static SSLSocketFactory sockets(Optional<Path> ca) {
    try {
      SSLContext context = SSLContext.getInstance("TLS");
      TrustManagerFactory trust =
          TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
      trust.init(ca.isPresent() ? store(ca.get()) : null);
      context.init(null, trust.getTrustManagers(), null);
      return context.getSocketFactory();
    } catch (CertificateException bad) {
      throw new SettingException(
          "ca",
          "ca = \""
              + ca.map(Path::toString).orElse("")
              + "\": no certificate in it; name a PEM file of the authority that signed the"
              + " broker's certificate",
          bad);
    } catch (IOException unreadable) {
      throw new SettingException(
          "ca",
          "ca = \""
              + ca.map(Path::toString).orElse("")
              + "\": cannot be read; name a PEM file of the authority that signed the"
              + " broker's certificate",
          unreadable);
    } catch (GeneralSecurityException broken) {
      throw new IllegalStateException("this Java cannot do TLS: " + broken.getMessage(), broken);
    }
  }

  private static KeyStore store(Path pem) throws GeneralSecurityException, IOException {
    Collection<? extends Certificate> certificates;
    try (InputStream in = Files.newInputStream(pem)) {
      certificates = CertificateFactory.getInstance("X.509").generateCertificates(in);
    }
    if (certificates.isEmpty()) {
      throw new CertificateException("empty");
    }
    KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
    store.load(null, null);
    int number = 0;
    for (Certificate certificate : certificates) {
      store.setCertificateEntry("authority-" + number++, certificate);
    }
    return store;
  }
}
