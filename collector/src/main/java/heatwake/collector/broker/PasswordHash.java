package heatwake.collector.broker;

import java.security.GeneralSecurityException;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Base64;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.PBEKeySpec;

/**
 * A password that cannot be read back: PBKDF2 with HMAC-SHA-512 (RFC 8018), written {@code
 * $7$iterations$salt$key} with salt and key in Base64, the form that {@code mosquitto_passwd}
 * writes too.
 */
public final class PasswordHash {
  private static final String SCHEME = "7";
  private static final int OWN_ITERATIONS = 20_000;

  /** Above this a wrong file would stall the broker at every connection. */
  private static final int MOST_ITERATIONS = 10_000_000;

  private static final int SALT_BYTES = 16;
  private static final int KEY_BYTES = 64;
  private static final SecureRandom RANDOM = new SecureRandom();

  private final int iterations;
  private final byte[] salt;
  private final byte[] key;

  private PasswordHash(int iterations, byte[] salt, byte[] key) {
    this.iterations = iterations;
    this.salt = salt;
    this.key = key;
  }

  /** Hashes a password with a salt of its own. */
  public static PasswordHash of(String password) {
    byte[] salt = new byte[SALT_BYTES];
    RANDOM.nextBytes(salt);
    return new PasswordHash(
        OWN_ITERATIONS, salt, derive(password, salt, OWN_ITERATIONS, KEY_BYTES));
  }

  /**
   * Reads a hash as written.
   *
   * @throws IllegalArgumentException if it is none
   */
  public static PasswordHash parse(String written) {
    String[] parts = written.strip().split("\\$", -1);
    if (parts.length != 5 || !parts[0].isEmpty() || !parts[1].equals(SCHEME)) {
      throw new IllegalArgumentException("not a hash");
    }
    int iterations = Integer.parseInt(parts[2]);
    byte[] salt = Base64.getDecoder().decode(parts[3]);
    byte[] key = Base64.getDecoder().decode(parts[4]);
    if (iterations < 1 || iterations > MOST_ITERATIONS || salt.length == 0 || key.length == 0) {
      throw new IllegalArgumentException("not a hash");
    }
    return new PasswordHash(iterations, salt, key);
  }

  /** Whether this is the hash of that password. */
  public boolean matches(String password) {
    return MessageDigest.isEqual(key, derive(password, salt, iterations, key.length));
  }

  private static byte[] derive(String password, byte[] salt, int iterations, int bytes) {
    try {
      return SecretKeyFactory.getInstance("PBKDF2WithHmacSHA512")
          .generateSecret(new PBEKeySpec(password.toCharArray(), salt, iterations, bytes * 8))
          .getEncoded();
    } catch (GeneralSecurityException impossible) {
      throw new IllegalStateException("every Java has PBKDF2 with SHA-512", impossible);
    }
  }

  /** As it is written in a file of users. */
  @Override
  public String toString() {
    Base64.Encoder base64 = Base64.getEncoder();
    return "$"
        + SCHEME
        + "$"
        + iterations
        + "$"
        + base64.encodeToString(salt)
        + "$"
        + base64.encodeToString(key);
  }
}
