package heatwake.dashboard.text;

import heatwake.dashboard.present.Unparted;
import java.io.PrintWriter;

/**
 * Lays text out for a terminal of 100 columns. Control characters in texts that came from outside
 * are shown as a question mark, so that no note or probe can steer the terminal.
 */
final class Layout {
  private static final int WIDTH = 100;

  /** Second column of a table: wide enough for the words that stand where a figure cannot. */
  private static final int VALUE_WIDTH = "too uncertain to tell".length();

  private final PrintWriter out;

  Layout(PrintWriter out) {
    this.out = out;
  }

  void blank() {
    out.println();
  }

  void heading(String text) {
    blank();
    line(text);
    out.println("-".repeat(Math.min(WIDTH, text.length())));
  }

  void line(String text) {
    out.println(harmless(text));
  }

  /** Three columns, the last of which is wrapped under itself. */
  void columns(int nameWidth, String name, String value, String remark) {
    String head =
        "  " + padded(harmless(name), nameWidth) + " " + padded(harmless(value), VALUE_WIDTH);
    if (remark.isBlank()) {
      out.println(head.stripTrailing());
    } else {
      paragraph(head + "  ", remark);
    }
  }

  /** Text behind a lead, wrapped so that later lines stand under the first. */
  void paragraph(String lead, String text) {
    StringBuilder line = new StringBuilder(lead);
    String indent = " ".repeat(lead.length());
    boolean empty = true;
    for (String word : Unparted.of(harmless(text).replaceAll(" +", " ")).split(" ", -1)) {
      if (!empty && line.length() + 1 + word.length() > WIDTH) {
        out.println(line.toString().stripTrailing());
        line = new StringBuilder(indent);
        empty = true;
      }
      line.append(empty ? "" : " ").append(Unparted.plain(word));
      empty = false;
    }
    out.println(line.toString().stripTrailing());
  }

  private static String padded(String text, int width) {
    return text.length() >= width ? text : text + " ".repeat(width - text.length());
  }

  private static String harmless(String text) {
    return text.replaceAll("\\R", " ").replaceAll("\\p{Cntrl}", "?");
  }
}
