package heatwake.collector.modbus;

import heatwake.collector.rig.ProbeSpec.Table;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Neighbouring registers of one unit that are read in one request. */
record RegisterBlock(
    int unitId, Table table, int first, int count, double intervalS, List<RegisterTap> taps) {
  /** Registers nobody asked for that may be read along to save a request. */
  private static final int WIDEST_GAP = 8;

  /** Well below the 125 a request may ask for; small meters refuse long ones. */
  private static final int LONGEST = 64;

  RegisterBlock {
    taps = List.copyOf(taps);
  }

  private record Group(int unitId, Table table, double intervalS) {}

  /** The fewest sensible requests that read all taps. */
  static List<RegisterBlock> covering(List<RegisterTap> taps) {
    Map<Group, List<RegisterTap>> groups = new LinkedHashMap<>();
    for (RegisterTap tap : taps) {
      groups
          .computeIfAbsent(
              new Group(tap.register().unitId(), tap.register().table(), tap.intervalS()),
              group -> new ArrayList<>())
          .add(tap);
    }
    List<RegisterBlock> blocks = new ArrayList<>();
    for (List<RegisterTap> group : groups.values()) {
      group.sort(Comparator.comparingInt(tap -> tap.register().number()));
      List<RegisterTap> together = new ArrayList<>();
      for (RegisterTap tap : group) {
        if (!together.isEmpty() && !fits(together, tap)) {
          blocks.add(of(together));
          together.clear();
        }
        together.add(tap);
      }
      blocks.add(of(together));
    }
    return blocks;
  }

  private static boolean fits(List<RegisterTap> together, RegisterTap next) {
    int first = together.get(0).register().number();
    return next.register().number() - end(together) <= WIDEST_GAP && next.end() - first <= LONGEST;
  }

  private static int end(List<RegisterTap> together) {
    return together.stream().mapToInt(RegisterTap::end).max().orElseThrow();
  }

  private static RegisterBlock of(List<RegisterTap> together) {
    RegisterTap first = together.get(0);
    return new RegisterBlock(
        first.register().unitId(),
        first.register().table(),
        first.register().number(),
        end(together) - first.register().number(),
        first.intervalS(),
        together);
  }

  /** The same registers, each probe in a request of its own. */
  List<RegisterBlock> apart() {
    return taps.stream().map(tap -> of(List.of(tap))).toList();
  }
}
