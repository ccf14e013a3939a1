package heatwake.dashboard.demo;

import me.tongfei.progressbar.ProgressBar;
import me.tongfei.progressbar.ProgressBarBuilder;
import me.tongfei.progressbar.ProgressBarStyle;

/** Tells the person how far the simulated night is: a bar in a terminal, a few lines elsewhere. */
public interface Progress extends AutoCloseable {
  /** Told how much is done, 0 to 1. */
  void reach(double share);

  @Override
  void close();

  /** Progress on standard error that suits where it is shown. */
  static Progress on(String task, boolean terminal) {
    return terminal ? bar(task) : lines(task);
  }

  private static Progress bar(String task) {
    ProgressBar bar =
        new ProgressBarBuilder()
            .setTaskName(task)
            .setInitialMax(100)
            .setStyle(ProgressBarStyle.ASCII)
            .setUpdateIntervalMillis(100)
            .hideEta()
            .build();
    return new Progress() {
      @Override
      public void reach(double share) {
        bar.stepTo(Math.round(100 * share));
      }

      @Override
      public void close() {
        bar.close();
        System.err.flush();
      }
    };
  }

  private static Progress lines(String task) {
    return new Progress() {
      private static final int PARTS = 4;
      private int told;

      @Override
      public void reach(double share) {
        int part = (int) (share * PARTS);
        if (part > told) {
          told = part;
          System.err.println(task + ": " + 100 * part / PARTS + " %");
        }
      }

      @Override
      public void close() {
        System.err.flush();
      }
    };
  }
}
