package heatwake.collector.soak;

import java.util.BitSet;

/** What was sent, by number from 0 on, what of it is owed and what was found stored. */
final class Ledger {
  private final BitSet owed = new BitSet();
  private final BitSet stored = new BitSet();
  private int sent;

  /** The number of the next one to send. */
  int next() {
    return sent++;
  }

  int sent() {
    return sent;
  }

  /** It must be there in the end. */
  void owe(int number) {
    owed.set(number);
  }

  void pardon(int number) {
    owed.clear(number);
  }

  /** Forgets what was found, to look again. */
  void recount() {
    stored.clear();
  }

  /** Notes that one was found; says whether it was for the first time. */
  boolean find(int number) {
    boolean first = !stored.get(number);
    stored.set(number);
    return first;
  }

  int owed() {
    return owed.cardinality();
  }

  int stored() {
    return stored.cardinality();
  }

  /** Owed and not there. */
  int lost() {
    BitSet missing = (BitSet) owed.clone();
    missing.andNot(stored);
    return missing.cardinality();
  }
}
