package heatwake.collector.store;

import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.UnnamedSite;

/**
 * By what the runs of one rig are known: its site and the name of its rig file. The path to the
 * file does not count: it is another one by hand and as a service.
 *
 * @param site name of the site
 * @param fileName name of the rig file, without folders
 */
record RigMark(String site, String fileName) {
  /** The mark of a rig that is at hand. */
  static RigMark of(RigFile rig) {
    return of(rig.rig().site().name(), rig.name());
  }

  static RigMark of(String site, String path) {
    return new RigMark(site, UnnamedSite.fileName(path));
  }
}
