package heatwake.dashboard.window;

import heatwake.analysis.finding.Flag;
import heatwake.dashboard.chart.ChartPicture;
import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.chart.StripStack;
import heatwake.dashboard.chart.TimeRange;
import java.awt.Dimension;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.FocusEvent;
import java.awt.event.FocusListener;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.event.MouseWheelEvent;
import java.awt.image.BufferedImage;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicReference;
import javax.swing.JComponent;
import javax.swing.SwingUtilities;

/**
 * Shows a stack of strips. The picture is painted on a thread of its own and only laid onto the
 * screen here, so that the window answers the finger whatever the run's length; the pointer's line
 * and the shaded span are painted over it.
 */
final class ChartPane extends JComponent {
  /** What the person does with the charts. */
  interface Listener {
    /** Drew a span with the pointer. */
    void selected(TimeRange range);

    /** Turned the wheel at a moment; a factor below one looks closer. */
    void zoomed(long ms, double factor);

    /** Touched a flag's bar. */
    void touched(Flag flag);

    /** Asked for the whole run. */
    void wholeWanted();
  }

  private static final int LEAST_DRAG = 8;

  private record Painted(StripStack stack, int width, int height, BufferedImage image) {}

  private record Wanted(StripStack stack, int width, int height, double scale) {}

  private final transient Listener listener;
  private final transient ExecutorService painter =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread made = new Thread(work, "chart-painter");
            made.setDaemon(true);
            return made;
          });
  private final transient AtomicReference<Wanted> wanted = new AtomicReference<>();
  private transient StripStack stack;
  private transient Painted painted;
  private transient Optional<TimeRange> shaded = Optional.empty();
  private int pointerX = -1;
  private int dragFromX = -1;

  ChartPane(Listener listener) {
    this.listener = listener;
    setName("charts");
    setOpaque(true);
    setFocusable(true);
    setBackground(Palette.PAPER);
    addComponentListener(
        new ComponentAdapter() {
          @Override
          public void componentResized(ComponentEvent event) {
            want();
          }
        });
    Pointer pointer = new Pointer();
    addMouseListener(pointer);
    addMouseMotionListener(pointer);
    addMouseWheelListener(pointer);
    addFocusListener(
        new FocusListener() {
          @Override
          public void focusGained(FocusEvent event) {
            repaint();
          }

          @Override
          public void focusLost(FocusEvent event) {
            repaint();
          }
        });
    ChartKeys.bind(this, listener);
  }

  /** Shows other charts, once they are painted. */
  void show(StripStack shown, Optional<TimeRange> shadedSpan) {
    stack = shown;
    shaded = shadedSpan;
    want();
    repaint();
  }

  /** What is on the screen now; empty before the first picture is painted. */
  Optional<StripStack> onScreen() {
    return Optional.ofNullable(painted).map(Painted::stack);
  }

  Optional<TimeRange> shadedSpan() {
    return shaded;
  }

  @Override
  public Dimension getPreferredSize() {
    return new Dimension(640, 480);
  }

  private void want() {
    if (stack == null || getWidth() < 80 || getHeight() < 80) {
      return;
    }
    double scale =
        getGraphicsConfiguration() == null
            ? 1
            : getGraphicsConfiguration().getDefaultTransform().getScaleX();
    boolean idle = wanted.getAndSet(new Wanted(stack, getWidth(), getHeight(), scale)) == null;
    if (idle) {
      painter.execute(this::paintWanted);
    }
  }

  /**
   * On the painter's thread: paints what is wanted last, and passes over what was wanted between.
   */
  private void paintWanted() {
    Wanted now = wanted.get();
    BufferedImage image = ChartPicture.of(now.stack, now.width, now.height, now.scale);
    SwingUtilities.invokeLater(
        () -> {
          painted = new Painted(now.stack, now.width, now.height, image);
          repaint();
        });
    if (!wanted.compareAndSet(now, null)) {
      painter.execute(this::paintWanted);
    }
  }

  @Override
  protected void paintComponent(Graphics graphics) {
    Graphics2D g = (Graphics2D) graphics;
    g.setColor(getBackground());
    g.fillRect(0, 0, getWidth(), getHeight());
    if (painted == null) {
      return;
    }
    g.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    g.drawImage(painted.image, 0, 0, getWidth(), getHeight(), null);
    StripStack shown = painted.stack;
    shaded.ifPresent(span -> shown.paintSpan(g, getWidth(), getHeight(), span));
    if (dragFromX >= 0) {
      shown.paintSpan(
          g, getWidth(), getHeight(), TimeRange.between(timeAt(dragFromX), timeAt(pointerX)));
    }
    if (pointerX >= 0) {
      shown.paintCursor(g, getWidth(), getHeight(), timeAt(pointerX));
    }
    if (isFocusOwner()) {
      g.setColor(Theme.ACCENT);
      g.drawRect(0, 0, getWidth() - 1, getHeight() - 1);
    }
  }

  private long timeAt(int x) {
    return painted.stack.timeAt(getWidth(), x);
  }

  private final class Pointer extends MouseAdapter {
    @Override
    public void mouseMoved(MouseEvent event) {
      pointerX = event.getX();
      repaint();
    }

    @Override
    public void mouseDragged(MouseEvent event) {
      mouseMoved(event);
    }

    @Override
    public void mouseExited(MouseEvent event) {
      pointerX = dragFromX >= 0 ? pointerX : -1;
      repaint();
    }

    @Override
    public void mousePressed(MouseEvent event) {
      if (painted != null && SwingUtilities.isLeftMouseButton(event)) {
        dragFromX = event.getX();
        pointerX = event.getX();
      }
    }

    @Override
    public void mouseReleased(MouseEvent event) {
      int from = dragFromX;
      dragFromX = -1;
      if (painted == null || from < 0) {
        return;
      }
      if (Math.abs(event.getX() - from) >= LEAST_DRAG) {
        listener.selected(TimeRange.between(timeAt(from), timeAt(event.getX())));
      } else if (event.getClickCount() == 2) {
        listener.wholeWanted();
      } else {
        painted
            .stack
            .flagAt(getWidth(), getHeight(), event.getX(), event.getY())
            .ifPresent(listener::touched);
      }
      repaint();
    }

    @Override
    public void mouseWheelMoved(MouseWheelEvent event) {
      if (painted != null) {
        double factor = Math.pow(1.25, event.getPreciseWheelRotation());
        listener.zoomed(timeAt(event.getX()), factor);
      }
    }
  }
}
