package heatwake.collector.mistake;

/**
 * The caller's mistake: a bad file, an unknown run, a bad rig. The message is one line for a tired
 * person: it names the file and line where there is one, what is wrong, and the mend. The command
 * line prints it on stderr and exits with status 2.
 */
public class MistakeException extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public MistakeException(String message) {
    super(message);
  }

  public MistakeException(String message, Throwable cause) {
    super(message, cause);
  }

  /** A mistake at a line of a file: {@code "site.toml:14: unit \"X\" ..."}. */
  public static MistakeException at(String file, long line, String message) {
    return new MistakeException(file + ":" + line + ": " + message);
  }
}
