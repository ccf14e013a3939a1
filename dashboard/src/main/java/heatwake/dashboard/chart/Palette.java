package heatwake.dashboard.chart;

import heatwake.analysis.finding.Severity;
import heatwake.analysis.phase.Phase;
import java.awt.Color;

/**
 * Colours. Those of lines and severities are from the palette of M. Okabe and K. Ito, "Color
 * Universal Design" (2008), darkened where needed for contrast on white, so that people with the
 * common kinds of colour blindness tell them apart. No meaning hangs on colour alone.
 */
public final class Palette {
  static final Color VERMILION = new Color(0xD55E00);
  static final Color BLUE = new Color(0x0072B2);
  static final Color SKY = new Color(0x3C9DD0);
  static final Color GREEN = new Color(0x009E73);
  static final Color PURPLE = new Color(0xB0528C);
  static final Color ORANGE = new Color(0xE69F00);
  static final Color BLACK = new Color(0x222222);

  /** Text. */
  public static final Color INK = new Color(0x1B2126);

  /** Text of lesser weight. */
  public static final Color FAINT_INK = new Color(0x5A6670);

  /** Paper. */
  public static final Color PAPER = Color.WHITE;

  static final Color GRID = new Color(0xE4E8EB);
  static final Color FRAME = new Color(0xB9C2C9);
  static final Color LANE = new Color(0xF4F6F8);

  /** Paper through which a line still shimmers, behind text that stands on one. */
  static final Color VEIL = new Color(255, 255, 255, 215);

  static final Color NOTE = new Color(0x4A4A9C);
  static final Color SELECTION = new Color(0x33, 0x66, 0x99, 36);

  private Palette() {}

  /** Colour of a phase in the band. */
  public static Color of(Phase phase) {
    return switch (phase) {
      case OFF -> new Color(0xD5DADE);
      case CIRCULATING -> new Color(0xA9D3EE);
      case FAN -> new Color(0xF3DF9B);
      case STARTING -> new Color(0xF0A95B);
      case STEADY -> new Color(0x63BE9C);
      case DEFROST -> new Color(0xC79BD8);
      case UNKNOWN -> new Color(0xFFFFFF);
    };
  }

  /** Colour of a flag's severity, dark enough for text on white. */
  public static Color of(Severity severity) {
    return switch (severity) {
      case INFO -> new Color(0x3A6EA5);
      case WARNING -> new Color(0xB26B00);
      case ALARM -> new Color(0xB3261E);
    };
  }
}
