package heatwake.collector.recorder;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.Map;

/**
 * Which runs of a database are being recorded by a living recorder: each holds a lock on its run's
 * byte of the file {@code <database>-recording}. The system frees it when the recorder dies,
 * however it dies; a run without an end and without a lock was left by a crash.
 */
final class RunLocks implements AutoCloseable {
  /** On some systems closing one channel frees all locks of the process on the file: keep one. */
  private static final Map<Path, Shared> OPEN = new HashMap<>();

  private static final class Shared {
    private final FileChannel channel;
    private int users;

    private Shared(FileChannel channel) {
      this.channel = channel;
    }
  }

  private final Path file;
  private final Shared shared;
  private final Map<Long, FileLock> held = new HashMap<>();

  private RunLocks(Path file, Shared shared) {
    this.file = file;
    this.shared = shared;
  }

  static RunLocks of(Path database) {
    Path absolute = database.toAbsolutePath().normalize();
    Path file = absolute.resolveSibling(absolute.getFileName() + "-recording");
    synchronized (OPEN) {
      Shared shared = OPEN.get(file);
      if (shared == null) {
        shared = new Shared(open(file));
        OPEN.put(file, shared);
      }
      shared.users++;
      return new RunLocks(file, shared);
    }
  }

  private static FileChannel open(Path file) {
    try {
      return FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    } catch (IOException e) {
      throw new UncheckedIOException(file + ": cannot be opened", e);
    }
  }

  /** Takes a run, if no living recorder has it. */
  synchronized boolean take(long run) {
    try {
      FileLock lock = shared.channel.tryLock(run, 1, false);
      if (lock == null) {
        return false;
      }
      held.put(run, lock);
      return true;
    } catch (OverlappingFileLockException e) {
      return false;
    } catch (IOException e) {
      throw new UncheckedIOException(file + ": cannot be locked", e);
    }
  }

  synchronized void free(long run) {
    FileLock lock = held.remove(run);
    try {
      if (lock != null) {
        lock.release();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(file + ": cannot be freed", e);
    }
  }

  @Override
  public synchronized void close() {
    for (Long run : Map.copyOf(held).keySet()) {
      free(run);
    }
    synchronized (OPEN) {
      shared.users--;
      if (shared.users == 0) {
        OPEN.remove(file);
        try {
          shared.channel.close();
        } catch (IOException e) {
          throw new UncheckedIOException(e);
        }
      }
    }
  }
}
