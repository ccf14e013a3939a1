package heatwake.dashboard.command;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/**
 * Reads the name of a file or folder. An empty one, which Java takes for the present folder, is
 * none.
 */
final class FileName implements ITypeConverter<Path> {
  @Override
  public Path convert(String word) {
    if (word.isBlank()) {
      throw new TypeConversionException("is empty; name a file or folder");
    }
    try {
      return Path.of(word);
    } catch (InvalidPathException unwritable) {
      throw new TypeConversionException(
          "cannot be the name of a file here; for letters beyond a to z set a locale, such as"
              + " LC_ALL=C.UTF-8");
    }
  }
}
