package heatwake.collector.rig;

import heatwake.analysis.site.Rig;
import heatwake.collector.mistake.MistakeException;
import java.nio.file.Path;
import java.util.List;

/**
 * A rig file, read and found sound.
 *
 * @param name what to call the file in messages
 * @param folder name of the folder it was read from; empty if it is not known
 * @param rig what the analysis needs of it
 * @param sources where readings come from
 * @param probes what is clipped where, in the order of the file
 * @param text the file as written; kept with every run, so that a run can be judged anew later. It
 *     holds no secret: passwords are named by environment variable only.
 */
public record RigFile(
    String name,
    String folder,
    Rig rig,
    List<SourceSpec> sources,
    List<ProbeSpec> probes,
    String text) {
  public RigFile {
    sources = List.copyOf(sources);
    probes = List.copyOf(probes);
  }

  /** The same read from a file. */
  RigFile readFrom(Path file) {
    Path parent = file.toAbsolutePath().normalize().getParent();
    Path last = parent == null ? null : parent.getFileName();
    return new RigFile(name, last == null ? "" : last.toString(), rig, sources, probes, text);
  }

  /** Its name as kept with its runs: as given, but never without a folder that is known. */
  public String nameWithFolder() {
    boolean bare = name.indexOf('/') < 0 && name.indexOf('\\') < 0;
    return bare && !folder.isEmpty() ? folder + "/" + name : name;
  }

  /** What a log calls its site: that of a rig that names none with the folder of its file. */
  public String siteInLog() {
    String site = rig.site().name();
    return UnnamedSite.is(site, name) ? UnnamedSite.withFolder(site, nameWithFolder()) : site;
  }

  /** A mistake at a key of one of its sources, which the file may have left out. */
  public MistakeException mistake(SourceSpec source, String key, String message) {
    String table = "source[" + sources.indexOf(source) + "]";
    return MistakeException.at(name, KeyLines.of(text).of(table + "." + key, table), message);
  }
}
