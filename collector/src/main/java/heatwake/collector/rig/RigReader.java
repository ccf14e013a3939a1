package heatwake.collector.rig;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.dataformat.toml.TomlMapper;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.site.Probe;
import heatwake.analysis.site.Rig;
import heatwake.collector.mistake.MistakeException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * Reads rig files (TOML 1.0) strictly: what is not understood is a mistake, never passed over, for
 * a mistyped key that is silently ignored costs a night of readings.
 */
public final class RigReader {
  /** A rig is some hundred lines; far beyond that it is the wrong file. */
  private static final long LARGEST_BYTES = 1_000_000;

  private static final List<String> TABLES =
      List.of("site", "pool", "tariff", "pump", "heater", "source", "probe");

  private RigReader() {}

  /**
   * Reads a rig file.
   *
   * @throws MistakeException naming file, line and mend
   */
  public static RigFile read(Path file) {
    return parse(textOf(file), file.toString()).readFrom(file);
  }

  /**
   * Reads a rig file of which only the site and the probes' uncertainties matter: a probe may name
   * no source, or one that is not described.
   *
   * @throws MistakeException naming file, line and mend
   */
  public static RigFile readForImport(Path file) {
    return parseForImport(textOf(file), file.toString()).readFrom(file);
  }

  /**
   * Reads a rig from text.
   *
   * @param name what to call it in messages
   * @throws MistakeException naming line and mend
   */
  public static RigFile parse(String text, String name) {
    return parse(text, name, SourceReader::refuseUnknown);
  }

  /**
   * Reads from text a rig whose sources do not matter, as {@link #readForImport} does.
   *
   * @param name what to call it in messages
   * @throws MistakeException naming line and mend
   */
  public static RigFile parseForImport(String text, String name) {
    return parse(text, name, (probe, source, sources) -> {});
  }

  /**
   * Refuses a rig that nothing can be recorded with.
   *
   * @throws MistakeException naming the line of the first probe without a source
   */
  public static void requireRecordable(RigFile rig) {
    KeyLines lines = KeyLines.of(rig.text());
    if (rig.probes().isEmpty()) {
      throw new MistakeException(
          rig.name() + ": no probes; add a [[source]] and a [[probe]] for each thing clipped on");
    }
    for (int i = 0; i < rig.probes().size(); i++) {
      ProbeSpec probe = rig.probes().get(i);
      if (probe.source().isEmpty()) {
        throw MistakeException.at(
            rig.name(),
            lines.of("probe[" + i + "]", ""),
            "probe "
                + probe.channel()
                + " has no source, so it cannot be recorded; add source = \"...\", the name of a [[source]]");
      }
    }
  }

  /** What to do about a probe whose source is not described. */
  interface UnknownSource {
    void met(TomlTable probe, String source, List<SourceSpec> sources);
  }

  private static RigFile parse(String text, String name, UnknownSource unknownSource) {
    String clean = text.startsWith("\uFEFF") ? text.substring(1) : text;
    JsonNode tree = tree(clean, name);
    TomlTable root = new TomlTable(new RigText(name, KeyLines.of(clean)), tree, "").only(TABLES);
    List<SourceSpec> sources = SourceReader.read(root.tables("source"));
    ProbeReader probes = new ProbeReader(sources, unknownSource);
    root.tables("probe").forEach(probes::read);
    Map<Channel, Probe> byChannel = new EnumMap<>(Channel.class);
    byChannel.putAll(probes.analysed());
    Rig rig =
        new Rig(
            SiteReader.site(root, name),
            SiteReader.pool(root),
            SiteReader.tariff(root),
            SiteReader.pumpCurve(root),
            HeaterReader.heater(root),
            byChannel);
    return new RigFile(name, "", rig, sources, probes.specs(), clean);
  }

  private static JsonNode tree(String text, String name) {
    try {
      return new TomlMapper().readTree(text);
    } catch (JsonProcessingException e) {
      JsonLocation place = e.getLocation();
      String message =
          "not sound TOML: "
              + e.getOriginalMessage().replaceAll("\\s*\\R\\s*", " ")
              + "; "
              + mend(e.getOriginalMessage());
      throw MistakeException.at(name, place == null ? 1 : Math.max(1, place.getLineNr()), message);
    }
  }

  private static String mend(String fault) {
    return fault.startsWith("Duplicate key")
        ? "this key stands above already in the same table; keep one of the two"
        : "texts and quantities stand in \"quotes\", numbers have a point";
  }

  private static String textOf(Path file) {
    try {
      if (Files.isDirectory(file)) {
        throw new MistakeException(file + ": is a folder; name a rig file");
      }
      if (Files.size(file) > LARGEST_BYTES) {
        throw new MistakeException(
            file + ": larger than " + LARGEST_BYTES + " bytes; this is not a rig file");
      }
      byte[] bytes = Files.readAllBytes(file);
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (NoSuchFileException e) {
      throw new MistakeException(file + ": no such file; check the path of the rig", e);
    } catch (CharacterCodingException e) {
      throw new MistakeException(file + ": not UTF-8 text; save the rig as UTF-8", e);
    } catch (IOException e) {
      throw new MistakeException(file + ": cannot be read (" + e.getMessage() + ")", e);
    }
  }
}
