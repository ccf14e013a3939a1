package heatwake.dashboard.present;

import heatwake.analysis.finding.Findings;
import java.util.Optional;

/** How a COP that cannot be right is shown: always with the same words. */
public final class Disbelief {
  /** In short, for beside a figure. */
  public static final String WORDS = "not to be believed";

  private Disbelief() {}

  /** In short, for beside a figure; empty where nothing belies it. */
  public static Optional<String> words(Findings findings) {
    return findings.heatDoubt().map(why -> WORDS);
  }

  /** With the reason. */
  static Optional<String> withReason(Findings findings) {
    return findings.heatDoubt().map(why -> WORDS + ": " + why);
  }
}
