package heatwake.dashboard.window;

import heatwake.analysis.finding.Flag;
import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.FlagRow;
import heatwake.dashboard.present.Names;
import heatwake.dashboard.present.VerdictWords;
import java.awt.Color;
import java.awt.Component;
import java.awt.Font;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import javax.swing.BorderFactory;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import net.miginfocom.swing.MigLayout;

/** The verdict and the flags; a touched flag opens and the charts jump to its time. */
final class FindingsPanel {
  private record Content(VerdictWords verdict, List<FlagRow> flags, List<String> missing) {}

  private final Column column = new Column();
  private final JScrollPane pane = column.scrolling();
  private final Consumer<Flag> jump;
  private Content content;
  private Optional<Flag> open = Optional.empty();

  FindingsPanel(Consumer<Flag> jump) {
    this.jump = jump;
  }

  JScrollPane pane() {
    return pane;
  }

  void show(VerdictWords verdict, List<FlagRow> flags, List<String> missing) {
    Content next = new Content(verdict, flags, missing);
    if (!next.equals(content)) {
      content = next;
      rebuild();
    }
  }

  /** Opens a flag's card, closing the one that was open. */
  void open(Flag flag) {
    open = Optional.of(flag);
    rebuild();
  }

  private void rebuild() {
    Optional<String> focused = focused();
    column.removeAll();
    column.addCard(VerdictCard.of(content.verdict()));
    if (content.flags().isEmpty()) {
      column.addCard(Text.paragraph("No flags.", 14.5f, Font.PLAIN, Palette.FAINT_INK));
    }
    JComponent opened = null;
    for (FlagRow row : content.flags()) {
      JPanel card = card(row);
      column.addCard(card);
      if (isOpen(row)) {
        opened = card;
      }
    }
    if (!content.missing().isEmpty()) {
      column.addCard(missing());
    }
    column.revalidate();
    column.repaint();
    focused.ifPresent(this::focus);
    JComponent toShow = opened;
    if (toShow != null) {
      javax.swing.SwingUtilities.invokeLater(() -> column.scrollRectToVisible(toShow.getBounds()));
    }
  }

  /** The name of the card that the keyboard has come to. */
  private Optional<String> focused() {
    return Stream.of(column.getComponents())
        .filter(Component::isFocusOwner)
        .map(Component::getName)
        .findFirst();
  }

  /** Cards are made anew when something changes; the keyboard stays with the same one. */
  private void focus(String name) {
    Stream.of(column.getComponents())
        .filter(card -> name.equals(card.getName()))
        .findFirst()
        .ifPresent(Component::requestFocusInWindow);
  }

  /** The same trouble stays open while it goes on and its end moves. */
  private boolean isOpen(FlagRow row) {
    return open.isPresent()
        && open.get().rule().equals(row.flag().rule())
        && open.get().startMs() == row.flag().startMs();
  }

  private JPanel card(FlagRow row) {
    Color color = Palette.of(row.severity());
    JPanel card = Column.card();
    card.setName("flag-" + row.flag().rule());
    card.getAccessibleContext().setAccessibleName(row.title() + ", " + row.when());
    card.setBorder(
        BorderFactory.createCompoundBorder(
            BorderFactory.createLineBorder(isOpen(row) ? color : Theme.EDGE),
            BorderFactory.createMatteBorder(0, 6, 0, 0, color)));
    card.add(head(row, color), "wmin 10");
    card.add(Text.line(row.title(), 17f, Font.BOLD, Palette.INK));
    card.add(Text.paragraph(row.evidence()), "wmin 10");
    for (String consequence : row.consequences()) {
      card.add(Text.paragraph(consequence, 14.5f, Font.PLAIN, Palette.INK), "wmin 10, gaptop 4");
    }
    if (isOpen(row)) {
      if (!row.causes().isEmpty()) {
        card.add(
            Text.paragraph(row.causes(), 14.5f, Font.PLAIN, Palette.FAINT_INK),
            "wmin 10, gaptop 4");
      }
      card.add(Text.line("Next check", 13f, Font.BOLD, Palette.FAINT_INK), "gaptop 6");
      card.add(Text.paragraph(row.flag().nextCheck()), "wmin 10");
    }
    Touchable.make(
        card,
        () -> {
          open = Optional.of(row.flag());
          rebuild();
          jump.accept(row.flag());
        });
    return card;
  }

  /** How grave, and when: in a narrow column the time goes on below itself. */
  private static JPanel head(FlagRow row, Color color) {
    JPanel head = new JPanel(new MigLayout("insets 0, gap 8 0, fillx", "[][grow,fill]"));
    head.setOpaque(false);
    head.add(Text.line(Names.of(row.severity()), 13f, Font.BOLD, color), "aligny top");
    head.add(Text.paragraph(row.when(), 13f, Font.PLAIN, Palette.FAINT_INK), "wmin 10");
    return head;
  }

  private JPanel missing() {
    JPanel card = Column.card();
    card.add(Text.line("Not computed", 13f, Font.BOLD, Palette.FAINT_INK));
    content.missing().forEach(line -> card.add(Bullet.of(line), "wmin 10"));
    return card;
  }
}
