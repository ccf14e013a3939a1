package heatwake.dashboard.window;

import java.awt.GraphicsEnvironment;

/** Whether this machine has a display to open a window on. */
public final class Display {
  private Display() {}

  /** Whether a window can be opened. A Java without its desktop parts cannot, display or not. */
  public static boolean isThere() {
    try {
      if (GraphicsEnvironment.isHeadless()) {
        return false;
      }
      GraphicsEnvironment.getLocalGraphicsEnvironment().getDefaultScreenDevice();
      return true;
    } catch (LinkageError | java.awt.AWTError | java.awt.HeadlessException e) {
      return false;
    }
  }
}
