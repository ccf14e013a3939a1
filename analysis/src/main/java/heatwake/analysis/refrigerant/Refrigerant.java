package heatwake.analysis.refrigerant;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.Collectors;

/** A refrigerant by its ISO 817 designation. */
public enum Refrigerant {
  R410A("R-410A"),
  R32("R-32"),
  R134A("R-134a"),
  R290("R-290"),
  R407C("R-407C"),
  R454B("R-454B");

  private final String designation;

  Refrigerant(String designation) {
    this.designation = designation;
  }

  /** ISO 817 designation, for instance {@code R-410A}. */
  public String designation() {
    return designation;
  }

  /**
   * Finds a refrigerant by its designation, with or without the hyphen, in either case.
   *
   * @throws IllegalArgumentException listing those that are known
   */
  public static Refrigerant of(String designation) {
    return find(designation)
        .orElseThrow(
            () ->
                new IllegalArgumentException(
                    "refrigerant \""
                        + designation
                        + "\" is not known; use one of "
                        + Arrays.stream(values())
                            .map(Refrigerant::designation)
                            .collect(Collectors.joining(", "))));
  }

  private static Optional<Refrigerant> find(String designation) {
    String wanted = designation.replace("-", "");
    return Arrays.stream(values())
        .filter(one -> one.designation.replace("-", "").equalsIgnoreCase(wanted))
        .findFirst();
  }
}
