package heatwake.dashboard.score;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/**
 * The whole bench. It is not part of the ordinary tests, since it judges rather than checks; see
 * docs/bench.md for the command. The property {@code bench.only} keeps only cases whose name holds
 * a regular expression; {@code bench.seeds}, numbers parted by commas, says which draws of both
 * families {@link #drawn} takes.
 */
class ScoredBench {
  private static final long HEALTHY_SEED = 20_310_504;
  private static final long UNSEEN_SEED = 424_242;
  private static final long FAULT_SEED = 40_513_002;

  @Test
  void seen() throws IOException {
    List<Case> cases = new ArrayList<>(HealthyCases.of(Stock.seen(), HEALTHY_SEED));
    cases.addAll(FaultCases.of(Stock.seen(), FAULT_SEED));
    score("Heaters of the seen family", "score.txt", cases);
  }

  @Test
  void unseen() throws IOException {
    List<Case> cases = new ArrayList<>(HealthyCases.of(Stock.unseen(), UNSEEN_SEED));
    cases.addAll(FaultCases.of(Stock.unseen(), UNSEEN_SEED + 1));
    score("Heaters of the unseen family", "score-unseen.txt", cases);
  }

  /** Many draws at once: a single one says little about a share of some per cent. */
  @Test
  void drawn() throws IOException {
    List<Case> cases = new ArrayList<>();
    String seeds = System.getProperty("bench.seeds", "1,2");
    for (long seed :
        Pattern.compile(",").splitAsStream(seeds).mapToLong(Long::parseLong).toArray()) {
      for (Stock stock : List.of(Stock.seen(), Stock.unseen())) {
        cases.addAll(HealthyCases.of(stock, seed));
        cases.addAll(FaultCases.of(stock, seed + 1));
        cases.addAll(VisitCases.of(stock, seed + 2));
      }
    }
    score("Heaters of both families", "score-drawn.txt", cases);
  }

  private static void score(String title, String file, List<Case> cases) throws IOException {
    Predicate<String> wanted = Pattern.compile(System.getProperty("bench.only", "")).asPredicate();
    List<Result> results =
        cases.parallelStream().filter(one -> wanted.test(one.name())).map(Result::of).toList();
    String sheet = ScoreSheet.of(title, results);
    Files.writeString(Path.of("target", file), sheet);
    System.out.println(sheet);
  }
}
