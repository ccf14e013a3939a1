package heatwake.analysis.finding;

import java.util.function.UnaryOperator;

/** Why a verdict is what it is: a flag, or a sentence. */
public sealed interface Reason {
  /** The reason in words. */
  String text();

  /** The same reason with every sentence said otherwise. */
  Reason reworded(UnaryOperator<String> said);

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

    @Override
    public Blames reworded(UnaryOperator<String> said) {
      return new Blames(flag.reworded(said));
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

    @Override
    public Beside reworded(UnaryOperator<String> said) {
      return new Beside(flag.reworded(said));
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

    @Override
    public Notes reworded(UnaryOperator<String> said) {
      return new Notes(flag.reworded(said));
    }
  }

  /**
   * A figure or a symptom.
   *
   * @param text the reason in words
   */
  record Sentence(String text) implements Reason {
    @Override
    public Sentence reworded(UnaryOperator<String> said) {
      return new Sentence(said.apply(text));
    }
  }
}
