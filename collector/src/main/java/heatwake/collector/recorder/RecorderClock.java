package heatwake.collector.recorder;

/** The two clocks a recorder needs: one that people set, and one that nobody can. */
public interface RecorderClock {
  /** Clocks of this machine. */
  RecorderClock SYSTEM =
      new RecorderClock() {
        @Override
        public long wallMs() {
          return System.currentTimeMillis();
        }

        @Override
        public long monotonicNs() {
          return System.nanoTime();
        }
      };

  /** UTC milliseconds; may jump. */
  long wallMs();

  /** Nanoseconds since some moment; never jumps. */
  long monotonicNs();
}
