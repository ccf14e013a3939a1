package heatwake.dashboard.window;

import com.formdev.flatlaf.FlatLightLaf;
import com.formdev.flatlaf.fonts.roboto.FlatRobotoFont;
import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.Tone;
import java.awt.Color;
import java.awt.Font;
import java.awt.Insets;
import java.util.Map;
import javax.swing.UIManager;
import javax.swing.plaf.FontUIResource;
import javax.swing.text.StyleContext;

/**
 * How the window looks: dark ink on light ground, large enough for a wet screen in daylight, every
 * button large enough for a finger.
 */
final class Theme {
  static final Color GROUND = new Color(0xEEF1F4);
  static final Color CARD = Color.WHITE;
  static final Color CHOSEN = new Color(0xD6EAF2);
  static final Color EDGE = new Color(0xD3DAE0);
  static final Color HEADER = new Color(0x14303F);
  static final Color ON_HEADER = new Color(0xF4F8FA);
  static final Color FAINT_ON_HEADER = new Color(0xA9BECB);
  static final Color ACCENT = new Color(0x0F6E93);

  private static final Color GOOD = new Color(0x00755A);
  private static final Color WARNING = new Color(0xA05A00);
  private static final Color ALARM = new Color(0xB3261E);
  private static final Color STALE = new Color(0x8A959D);

  static final float TEXT = 15f;

  private Theme() {}

  /** Sets the look and feel of the whole process. Call before the first component is made. */
  static void install() {
    FlatRobotoFont.install();
    FlatLightLaf.setGlobalExtraDefaults(Map.of("@accentColor", "#0F6E93"));
    FlatLightLaf.setup();
    UIManager.put("defaultFont", new FontUIResource(font(Font.PLAIN, TEXT)));
    UIManager.put("Component.arc", 8);
    UIManager.put("Button.arc", 8);
    UIManager.put("Button.margin", new Insets(7, 14, 7, 14));
    UIManager.put("ToggleButton.margin", new Insets(7, 12, 7, 12));
    UIManager.put("TextField.margin", new Insets(6, 10, 6, 10));
    UIManager.put("ComboBox.padding", new Insets(6, 10, 6, 10));
    UIManager.put("ScrollBar.width", 16);
    UIManager.put("ScrollBar.thumbArc", 8);
    UIManager.put("TabbedPane.tabHeight", 42);
    UIManager.put("TabbedPane.tabAreaAlignment", "fill");
    UIManager.put("TabbedPane.tabInsets", new Insets(4, 4, 4, 4));
    UIManager.put("TabbedPane.font", new FontUIResource(font(Font.PLAIN, 14f)));
    UIManager.put("TabbedPane.selectedBackground", CARD);
    UIManager.put("Panel.background", GROUND);
  }

  /** The charts' type, with the machine's own fonts for letters that it lacks. */
  static Font font(int style, float size) {
    return StyleContext.getDefaultStyleContext()
        .getFont(FlatRobotoFont.FAMILY, style, Math.round(size))
        .deriveFont(size);
  }

  static Color of(Tone tone) {
    return switch (tone) {
      case GOOD -> GOOD;
      case PLAIN -> Palette.INK;
      case WARNING -> WARNING;
      case ALARM -> ALARM;
      case STALE -> STALE;
    };
  }
}
