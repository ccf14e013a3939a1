package heatwake.collector.rig;

/**
 * The site of a rig that names none: it has the name of its file for one, so that the folder is
 * what tells it from others.
 */
public final class UnnamedSite {
  private static final String ENDING = ".toml";

  private UnnamedSite() {}

  /** The name of a rig file without folders. */
  public static String fileName(String path) {
    return path.substring(Math.max(path.lastIndexOf('/'), path.lastIndexOf('\\')) + 1);
  }

  /**
   * Whether a site is one.
   *
   * @param path path to the rig file
   */
  public static boolean is(String site, String path) {
    return fileName(path).equals(site + ENDING);
  }

  /** The folder that a rig file lies in; empty if the path names none. */
  public static String folder(String path) {
    String before = path.substring(0, path.length() - fileName(path).length());
    return before.isEmpty() ? "" : fileName(before.substring(0, before.length() - 1));
  }

  /** Its name with the folder, {@code rig (north)}, as far as that is known. */
  public static String withFolder(String site, String path) {
    String folder = folder(path);
    return folder.isEmpty() ? site : site + " (" + folder + ")";
  }
}
