package heatwake.analysis.finding;

/** Why a verdict is what it is: a flag, or a sentence. */
public sealed interface Reason {
  /** The reason in words. */
  String text();

  /**
   * A flag on the verdict's side.
   *
   * @param flag the flag, which stands among the findings
   */
  record Blames(Flag flag) implements Reason {
    @Override
    public String text() {
      return flag.rule() + ": " + flag.evidence();
    }
  }

  /**
   * A flag on another side than the verdict's.
   *
   * @param flag the flag, which stands among the findings
   */
  record Beside(Flag flag) implements Reason {
    @Override
    public String text() {
      return "also " + flag.rule() + " (" + flag.side().id() + "): " + flag.evidence();
    }
  }

  /**
   * A flag that is worth a word but decides nothing.
   *
   * @param flag the flag, which stands among the findings
   */
  record Notes(Flag flag) implements Reason {
    @Override
    public String text() {
      return flag.evidence();
    }
  }

  /**
   * A figure or a symptom.
   *
   * @param text the reason in words
   */
  record Sentence(String text) implements Reason {}
}
