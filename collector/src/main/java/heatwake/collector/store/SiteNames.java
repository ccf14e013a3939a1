package heatwake.collector.store;

import heatwake.collector.rig.UnnamedSite;
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
  private final Map<String, Set<String>> folders = new HashMap<>();

  /** A run that is in the list. */
  void add(String site, String rigName) {
    if (UnnamedSite.is(site, rigName)) {
      folders.computeIfAbsent(site, first -> new HashSet<>()).add(UnnamedSite.folder(rigName));
    }
  }

  /** The name for a run's site, once all runs have been added. */
  String shown(String site, String rigName) {
    boolean shared = UnnamedSite.is(site, rigName) && folders.get(site).size() > 1;
    return shared ? UnnamedSite.withFolder(site, rigName) : site;
  }
}
