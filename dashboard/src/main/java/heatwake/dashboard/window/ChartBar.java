package heatwake.dashboard.window;

import heatwake.dashboard.chart.RunCharts;
import heatwake.dashboard.chart.Strip;
import heatwake.dashboard.chart.View;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.swing.ButtonGroup;
import javax.swing.JButton;
import javax.swing.JCheckBoxMenuItem;
import javax.swing.JPanel;
import javax.swing.JPopupMenu;
import javax.swing.JToggleButton;
import net.miginfocom.swing.MigLayout;

/** Buttons over the charts: how much of the run, which strips, charts or readings. */
final class ChartBar extends JPanel {
  private static final long MINUTE_MS = 60_000;

  private static final Map<String, View> PRESETS = new LinkedHashMap<>();

  static {
    PRESETS.put("15 min", new View.Latest(15 * MINUTE_MS));
    PRESETS.put("1 h", new View.Latest(60 * MINUTE_MS));
    PRESETS.put("6 h", new View.Latest(360 * MINUTE_MS));
    PRESETS.put("All", new View.Whole());
  }

  /** What the person asks of the charts. */
  interface Listener {
    void viewChosen(View view);

    /** Empty: as many strips as fit. */
    void stripsChosen(Set<Strip> strips);

    void wallChosen(boolean readingsInPlaceOfCharts);
  }

  private final ButtonGroup presets = new ButtonGroup();
  private final Map<View, JToggleButton> presetButtons = new LinkedHashMap<>();
  private final JButton choose = new JButton("Strips");
  private final Set<Strip> chosen = EnumSet.noneOf(Strip.class);
  private final transient Listener listener;
  private List<Strip> offered = List.of();
  private List<Strip> visible = List.of();

  ChartBar(Listener listener) {
    super(new MigLayout("insets 0, gap 6 0, fillx, novisualpadding", "[][][][]12[]push[]"));
    this.listener = listener;
    setOpaque(false);
    PRESETS.forEach(
        (name, view) -> {
          JToggleButton button = new JToggleButton(name);
          button.setName("view-" + name);
          button.addActionListener(event -> listener.viewChosen(view));
          presets.add(button);
          presetButtons.put(view, button);
          add(button);
        });
    choose.setName("strips");
    choose.addActionListener(event -> offerStrips());
    add(choose);
    JToggleButton wall = new JToggleButton("Large readings");
    wall.setName("wall");
    wall.addActionListener(event -> listener.wallChosen(wall.isSelected()));
    add(wall);
  }

  /** Marks the preset that is in force, if one is. */
  void showView(View view) {
    JToggleButton button = presetButtons.get(view);
    if (button == null) {
      presets.clearSelection();
    } else {
      button.setSelected(true);
    }
  }

  void showStrips(RunCharts charts, List<Strip> shown) {
    offered = charts.strips();
    visible = shown;
  }

  private void offerStrips() {
    JPopupMenu menu = new JPopupMenu();
    JCheckBoxMenuItem fit = new JCheckBoxMenuItem("As many as fit", chosen.isEmpty());
    fit.addActionListener(
        event -> {
          chosen.clear();
          listener.stripsChosen(Set.of());
        });
    menu.add(fit);
    menu.addSeparator();
    for (Strip strip : offered) {
      JCheckBoxMenuItem item = new JCheckBoxMenuItem(strip.title(), visible.contains(strip));
      item.addActionListener(event -> toggle(strip));
      menu.add(item);
    }
    menu.show(choose, 0, choose.getHeight());
  }

  private void toggle(Strip strip) {
    List<Strip> next = new ArrayList<>(visible);
    if (!next.remove(strip)) {
      next.add(strip);
    }
    chosen.clear();
    chosen.addAll(next);
    listener.stripsChosen(Set.copyOf(chosen));
  }
}
