package heatwake.collector.mistake;

/**
 * A setting of a source that is well written but will not do, like the name of a file that is not
 * there. Who knows the rig file says where it stands.
 */
public final class SettingException extends MistakeException {
  private static final long serialVersionUID = 1L;

  private final String key;

  /**
   * A setting that will not do.
   *
   * @param key key of the source's table in the rig
   */
  public SettingException(String key, String message, Throwable cause) {
    super(message, cause);
    this.key = key;
  }

  /** Key of the source's table in the rig. */
  public String key() {
    return key;
  }
}
