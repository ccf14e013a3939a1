package heatwake.collector.store;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/**
 * What sites are called in a list of runs. A rig that names no site has the name of its file for
 * one; where such files lie in several folders, the folder's name is added. Nothing else goes by
 * it: a rig's own runs are known by what is stored.
 */
final class SiteNames {
  private static final String RIG_ENDING = ".toml";

  private final Map<String, Set<String>> folders = new HashMap<>();

  /** A run that is in the list. */
  void add(String site, String rigName) {
    if (isFileName(site, rigName)) {
      folders.computeIfAbsent(site, first -> new HashSet<>()).add(folder(rigName));
    }
  }

  /** The name for a run's site, once all runs have been added. */
  String shown(String site, String rigName) {
    String folder = folder(rigName);
    boolean shared = isFileName(site, rigName) && folders.get(site).size() > 1;
    return shared && !folder.isEmpty() ? site + " (" + folder + ")" : site;
  }

  private static boolean isFileName(String site, String rigName) {
    return RigMark.fileName(rigName).equals(site + RIG_ENDING);
  }

  private static String folder(String rigName) {
    String file = RigMark.fileName(rigName);
    String path = rigName.substring(0, rigName.length() - file.length());
    return path.isEmpty() ? "" : RigMark.fileName(path.substring(0, path.length() - 1));
  }
}
