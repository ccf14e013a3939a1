package heatwake.dashboard.command;

import heatwake.collector.mistake.MistakeException;
import heatwake.collector.store.StoreBlockedException;
import heatwake.collector.store.StoreException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.concurrent.ExecutionException;

/** Says in one line what ended a command, in words that need no knowledge of Java. */
final class FaultWords {
  private FaultWords() {}

  /** The exit status that goes with it. */
  static int status(Throwable fault) {
    return unwrapped(fault) instanceof MistakeException ? Main.MISTAKE : Main.FAULT;
  }

  /** One line. */
  static String of(Throwable fault) {
    return oneLine(words(unwrapped(fault)));
  }

  /** A text without its line breaks. */
  static String oneLine(String text) {
    return text.replaceAll("\\s*\\R\\s*", " ");
  }

  private static Throwable unwrapped(Throwable fault) {
    return fault instanceof ExecutionException && fault.getCause() != null
        ? unwrapped(fault.getCause())
        : fault;
  }

  private static String words(Throwable fault) {
    if (fault instanceof MistakeException) {
      return fault.getMessage();
    }
    if (fault instanceof StoreBlockedException blocked) {
      return blocked.getMessage() + "; " + blocked.mend();
    }
    if (fault instanceof StoreException) {
      return fault.getMessage();
    }
    if (fault instanceof UncheckedIOException unchecked) {
      return words(unchecked);
    }
    if (fault instanceof FileSystemException file) {
      return words(file);
    }
    if (fault instanceof IOException && fault.getMessage() != null) {
      return fault.getMessage();
    }
    return "a fault in the program ("
        + fault
        + "); please report it with the command that led to it";
  }

  private static String words(UncheckedIOException fault) {
    IOException cause = fault.getCause();
    boolean plain = cause.toString().equals(fault.getMessage());
    return plain ? words(cause) : fault.getMessage() + " (" + words(cause) + ")";
  }

  private static String words(FileSystemException fault) {
    if (fault instanceof NoSuchFileException) {
      return fault.getFile() + ": no such file; check the path";
    }
    if (fault instanceof AccessDeniedException) {
      return fault.getFile() + ": not allowed; check its permissions";
    }
    return fault.getFile()
        + ": "
        + (fault.getReason() == null ? "cannot be used" : fault.getReason())
        + "; check the path";
  }
}
