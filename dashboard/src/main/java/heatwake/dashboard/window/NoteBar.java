package heatwake.dashboard.window;

import heatwake.dashboard.chart.Palette;
import heatwake.dashboard.present.Tone;
import java.awt.Font;
import java.util.Optional;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JTextField;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;

/** Where the person types what they did: "bypass moved". */
final class NoteBar extends JPanel {
  private static final int MOST_CHARACTERS = 500;

  private final JTextField text = new JTextField();
  private final JButton add = new JButton("Add note");
  private final JLabel answer = Text.line("", 14f, Font.PLAIN, Palette.FAINT_INK);
  private final transient BiConsumer<String, Consumer<Optional<String>>> store;

  /**
   * Makes the bar.
   *
   * @param store stores a note and tells, on any thread, what went wrong, if anything did
   */
  NoteBar(BiConsumer<String, Consumer<Optional<String>>> store) {
    super(new MigLayout("insets 0 10 10 10, gap 8 0, fillx", "[grow,fill][][]"));
    this.store = store;
    setOpaque(false);
    text.setName("note");
    asksForRunGoingOn();
    text.addActionListener(event -> add());
    add.setName("add-note");
    add.addActionListener(event -> add());
    answer.setName("note-answer");
    add(text, "wmin 80");
    add(answer, "wmin 0");
    add(add);
  }

  /** The run goes on: what is typed gets the time now. */
  void asksForRunGoingOn() {
    ask("Note what you did, with the time now");
  }

  /** The run is over: what is typed stands at its last moment, whenever it is typed. */
  void asksForRunOver() {
    ask("Note on this run; it is over, so the note stands at its end");
  }

  private void ask(String words) {
    text.putClientProperty("JTextField.placeholderText", words);
    text.repaint();
  }

  @Override
  public void setEnabled(boolean enabled) {
    super.setEnabled(enabled);
    text.setEnabled(enabled);
    add.setEnabled(enabled);
  }

  private void add() {
    String note = text.getText().strip();
    if (note.isEmpty()) {
      return;
    }
    if (note.length() > MOST_CHARACTERS) {
      say("at most " + MOST_CHARACTERS + " characters", Tone.WARNING);
      return;
    }
    add.setEnabled(false);
    store.accept(note, trouble -> SwingUtilities.invokeLater(() -> stored(note, trouble)));
  }

  private void stored(String note, Optional<String> trouble) {
    add.setEnabled(isEnabled());
    if (trouble.isPresent()) {
      say("not stored: " + trouble.get(), Tone.ALARM);
      return;
    }
    say("note stored", Tone.GOOD);
    if (text.getText().strip().equals(note)) {
      text.setText("");
    }
  }

  private void say(String words, Tone tone) {
    answer.setText(words);
    answer.setForeground(Theme.of(tone));
  }
}
