package heatwake.dashboard.chart;

import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import javax.imageio.ImageIO;

/** Charts as pictures. */
public final class ChartPicture {
  private ChartPicture() {}

  /** Paints a stack into an image, {@code scale} pixels to each unit of its width and height. */
  public static BufferedImage of(StripStack stack, int width, int height, double scale) {
    BufferedImage image =
        new BufferedImage(
            (int) Math.ceil(width * scale),
            (int) Math.ceil(height * scale),
            BufferedImage.TYPE_INT_RGB);
    Graphics2D g = image.createGraphics();
    g.setColor(Palette.PAPER);
    g.fillRect(0, 0, image.getWidth(), image.getHeight());
    g.scale(scale, scale);
    stack.paint(g, width, height);
    g.dispose();
    return image;
  }

  /**
   * Writes a stack as a PNG file.
   *
   * @throws UncheckedIOException if the file cannot be written
   */
  public static void writePng(Path file, StripStack stack, int width, int height) {
    try {
      ImageIO.write(of(stack, width, height, 1), "png", file.toFile());
    } catch (IOException e) {
      throw new UncheckedIOException("cannot write " + file, e);
    }
  }
}
