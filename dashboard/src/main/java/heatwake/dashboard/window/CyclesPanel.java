package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.chart.TimeRange;
import heatwake.dashboard.present.CycleRow;
import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Font;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.DefaultListModel;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JTextArea;
import javax.swing.ListCellRenderer;
import javax.swing.ListSelectionModel;
import net.miginfocom.swing.MigLayout;

/** The compressor cycles in order of time; the charts show the one that is touched. */
final class CyclesPanel {
  private static final String NONE_YET = "None yet: the compressor was not seen running.";

  private final JPanel pane = new JPanel(new BorderLayout());
  private final JTextArea head = Text.paragraph(NONE_YET, 14.5f, Font.PLAIN, Palette.FAINT_INK);
  private final DefaultListModel<CycleRow> model = new DefaultListModel<>();
  private final JList<CycleRow> list = new JList<>(model);
  private final Consumer<TimeRange> jump;
  private List<CycleRow> shown = List.of();
  private boolean filling;

  /**
   * Makes the list.
   *
   * @param energyUnit unit of the rows' heat and electric energy
   * @param jump shows a stretch in the charts
   */
  CyclesPanel(String energyUnit, Consumer<TimeRange> jump) {
    this.jump = jump;
    list.setName("cycles");
    list.setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
    list.setCellRenderer(new Renderer(energyUnit));
    list.addListSelectionListener(
        event -> {
          if (!event.getValueIsAdjusting() && !filling) {
            jumpToSelected();
          }
        });
    list.addMouseListener(
        new MouseAdapter() {
          @Override
          public void mouseReleased(MouseEvent event) {
            // Touched once more, it is wanted once more.
            jumpToSelected();
          }
        });
    head.setBorder(BorderFactory.createEmptyBorder(10, 12, 8, 12));
    JScrollPane scrolling = new JScrollPane(list);
    scrolling.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
    scrolling.setBorder(BorderFactory.createMatteBorder(1, 0, 0, 0, Theme.EDGE));
    pane.setBackground(Theme.CARD);
    pane.add(head, BorderLayout.NORTH);
    pane.add(scrolling, BorderLayout.CENTER);
  }

  JPanel pane() {
    return pane;
  }

  void show(List<CycleRow> rows) {
    if (rows.equals(shown)) {
      return;
    }
    int selected = list.getSelectedIndex();
    filling = true;
    // A run that goes on changes its last cycle and adds others: only what changed is put anew.
    for (int i = 0; i < rows.size(); i++) {
      if (i >= model.size()) {
        model.addElement(rows.get(i));
      } else if (!model.get(i).equals(rows.get(i))) {
        model.set(i, rows.get(i));
      }
    }
    if (model.size() > rows.size()) {
      model.removeRange(rows.size(), model.size() - 1);
    }
    boolean sameRun =
        selected >= 0
            && selected < rows.size()
            && rows.get(selected).startMs() == shown.get(selected).startMs();
    if (!sameRun) {
      list.clearSelection();
    }
    filling = false;
    shown = List.copyOf(rows);
    head.setText(
        rows.isEmpty() ? NONE_YET : CycleRow.summary(rows) + ". " + CycleRow.coverage(rows));
  }

  /** Something else is shown in the charts now. */
  void clearSelection() {
    filling = true;
    list.clearSelection();
    filling = false;
  }

  private void jumpToSelected() {
    CycleRow row = list.getSelectedValue();
    if (row != null) {
      jump.accept(TimeRange.between(row.startMs(), row.endMs()));
    }
  }

  /** Three lines a cycle, high enough for a finger. */
  private static final class Renderer implements ListCellRenderer<CycleRow> {
    private final JPanel line =
        new JPanel(new MigLayout("insets 7 12 7 12, gap 6 1, fillx", "[grow][]"));
    private final JLabel when = Text.line("", Theme.TEXT, Font.BOLD, Palette.INK);
    private final JLabel ran = Text.line("", 14f, Font.PLAIN, Palette.FAINT_INK);
    private final JLabel heat = Text.line("", 14f, Font.PLAIN, Palette.INK);
    private final JLabel cop = Text.line("", 14f, Font.BOLD, Palette.INK);
    private final JLabel electric = Text.line("", 14f, Font.PLAIN, Palette.FAINT_INK);
    private final String energyUnit;

    Renderer(String energyUnit) {
      this.energyUnit = energyUnit;
      line.setBorder(BorderFactory.createMatteBorder(0, 0, 1, 0, Theme.EDGE));
      line.add(when, "wmin 0");
      line.add(ran, "wrap, alignx right");
      line.add(heat, "wmin 0");
      line.add(cop, "wrap, alignx right");
      line.add(electric, "span 2, wmin 0");
    }

    @Override
    public Component getListCellRendererComponent(
        JList<? extends CycleRow> list,
        CycleRow row,
        int index,
        boolean selected,
        boolean focused) {
      when.setText(row.when());
      ran.setText(row.ran());
      heat.setText("Heat " + row.heat() + " " + energyUnit);
      cop.setText("COP " + row.cop());
      electric.setText("Electric " + row.electric() + " " + energyUnit);
      line.setBackground(selected ? Theme.CHOSEN : Theme.CARD);
      return line;
    }
  }
}
