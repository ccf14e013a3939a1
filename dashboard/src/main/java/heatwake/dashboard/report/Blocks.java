package heatwake.dashboard.report;

import com.lowagie.text.Chunk;
import com.lowagie.text.Element;
import com.lowagie.text.Font;
import com.lowagie.text.Paragraph;
import com.lowagie.text.Phrase;
import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.DefaultSplitCharacter;
import com.lowagie.text.pdf.PdfChunk;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import heatwake.dashboard.present.FigureRow;
import heatwake.dashboard.present.Tone;
import heatwake.dashboard.present.Unparted;
import java.awt.Color;
import java.nio.CharBuffer;
import java.util.List;

/** The building blocks of the report's pages: headings, tables, boxes, all in one style. */
final class Blocks {
  private static final Color HAIRLINE = new Color(0xD5DCE1);
  private static final float SPACE = 6;

  /** Small letters that stand in a line of half the page's width, about. */
  private static final int HALF_LINE = 57;

  private final ReportFonts fonts;

  Blocks(ReportFonts fonts) {
    this.fonts = fonts;
  }

  ReportFonts fonts() {
    return fonts;
  }

  Paragraph heading(String text) {
    Paragraph paragraph = new Paragraph(chunk(text, fonts.heading()));
    paragraph.setLeading(fonts.heading().getSize() * 1.2f);
    paragraph.setSpacingBefore(SPACE);
    paragraph.setSpacingAfter(SPACE / 2);
    paragraph.setKeepTogether(true);
    return paragraph;
  }

  Paragraph paragraph(String text, Font font) {
    Paragraph paragraph = new Paragraph(chunk(text, font));
    paragraph.setLeading(font.getSize() * 1.35f);
    return paragraph;
  }

  /** Text of which no line ends between a number and its unit. */
  private static Chunk chunk(String text, Font font) {
    return new Chunk(text, font).setSplitCharacter(Blocks::mayEndAt);
  }

  private static boolean mayEndAt(int start, int at, int end, char[] text, PdfChunk[] chunks) {
    return DefaultSplitCharacter.DEFAULT.isSplitCharacter(start, at, end, text, chunks)
        && Unparted.mayEndAt(CharBuffer.wrap(text), at);
  }

  /** A table over the whole width whose columns share it in the ratio given. */
  PdfPTable table(float... ratio) {
    PdfPTable table = new PdfPTable(ratio);
    table.setWidthPercentage(100);
    table.setSpacingBefore(2);
    return table;
  }

  /** A cell of a ruled table. */
  PdfPCell cell(String text, Font font) {
    Phrase phrase = new Phrase(chunk(text, font));
    phrase.setLeading(font.getSize() * 1.3f);
    PdfPCell cell = new PdfPCell(phrase);
    cell.setBorder(Rectangle.BOTTOM);
    cell.setBorderColor(HAIRLINE);
    cell.setBorderWidth(0.5f);
    cell.setPadding(3);
    cell.setPaddingLeft(0);
    cell.setVerticalAlignment(Element.ALIGN_TOP);
    return cell;
  }

  /** A cell that only holds others in place. */
  PdfPCell frame() {
    PdfPCell cell = new PdfPCell();
    cell.setBorder(Rectangle.NO_BORDER);
    cell.setPadding(0);
    return cell;
  }

  /** Figures with their remarks, one a line. */
  PdfPTable figures(List<FigureRow> rows) {
    PdfPTable table = table(38, 30, 46);
    for (FigureRow row : rows) {
      table.addCell(cell(row.name(), fonts.text()));
      table.addCell(cell(row.value(), fonts.strong()));
      table.addCell(cell(row.remark(), fonts.soft()));
    }
    return table;
  }

  /** A list in two columns of about the same height, read down the left one first. */
  PdfPTable halves(List<String> texts, Font font) {
    int lines = texts.stream().mapToInt(Blocks::halfLines).sum();
    PdfPCell left = frame();
    PdfPCell right = frame();
    int above = 0;
    for (String text : texts) {
      int own = halfLines(text);
      // Left, unless that column would end further below the middle than it now ends above it.
      PdfPCell column = 2 * above + own < lines ? left : right;
      column.addElement(paragraph("•  " + text, font));
      above += own;
    }
    PdfPTable table = table(48, 4, 48);
    table.setSplitLate(false);
    table.addCell(left);
    table.addCell(frame());
    table.addCell(right);
    return table;
  }

  /** Lines that a text takes in such a column, about. */
  private static int halfLines(String text) {
    return 1 + text.length() / HALF_LINE;
  }

  /** A box with a bar of colour at its left, for what must not be overlooked. */
  PdfPTable box(Tone tone) {
    PdfPTable table = table(1);
    table.setSpacingBefore(1.5f * SPACE);
    PdfPCell cell = table.getDefaultCell();
    cell.setBorder(Rectangle.LEFT);
    cell.setBorderWidthLeft(4);
    cell.setBorderColorLeft(colour(tone));
    cell.setBackgroundColor(tint(tone));
    cell.setPadding(8);
    return table;
  }

  static Color colour(Tone tone) {
    return switch (tone) {
      case GOOD -> new Color(0x2E7D4F);
      case WARNING -> new Color(0xC77700);
      case ALARM -> new Color(0xB3261E);
      case PLAIN, STALE -> new Color(0x5B6B77);
    };
  }

  private static Color tint(Tone tone) {
    return switch (tone) {
      case GOOD -> new Color(0xEEF6F1);
      case WARNING -> new Color(0xFDF4E7);
      case ALARM -> new Color(0xFBECEB);
      case PLAIN, STALE -> new Color(0xF1F4F6);
    };
  }
}
