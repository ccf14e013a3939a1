package heatwake.collector.store;

import heatwake.analysis.quantity.Channel;
import heatwake.collector.mistake.MistakeException;
import heatwake.collector.rig.Feeds;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Finds the runs of a rig: by site, name of the rig file, and where its readings come from. */
final class RigHistory {
  private final Connection connection;

  RigHistory(Connection connection) {
    this.connection = connection;
  }

  /**
   * The latest runs of a rig before some run, latest first.
   *
   * @param before number of a run; those from it on are not looked at
   */
  List<FedAlike> of(RigFile rig, long before) throws SQLException {
    RigMark mark = RigMark.of(rig);
    Feeds feeds = Feeds.of(rig);
    Map<String, Set<Channel>> sharedByText = new HashMap<>();
    List<FedAlike> found = new ArrayList<>();
    try (PreparedStatement select =
        connection.prepareStatement(
            "SELECT id, rig_name, rig FROM run WHERE id < ? AND site = ? ORDER BY id DESC LIMIT ?")) {
      select.setLong(1, before);
      select.setString(2, mark.site());
      select.setInt(3, Store.MOST_EARLIER_RUNS);
      try (ResultSet row = select.executeQuery()) {
        while (row.next()) {
          if (RigMark.of(mark.site(), row.getString(2)).equals(mark)) {
            Set<Channel> shared =
                sharedByText.computeIfAbsent(row.getString(3), text -> shared(feeds, text));
            if (!shared.isEmpty()) {
              found.add(new FedAlike(row.getLong(1), shared));
            }
          }
        }
      }
    }
    return found;
  }

  private static Set<Channel> shared(Feeds feeds, String text) {
    try {
      return feeds.sharedWith(Feeds.of(RigReader.parseForImport(text, "rig")));
    } catch (MistakeException fromBefore) {
      // Written for another version of this program; nothing is known to be the same.
      return Set.of();
    }
  }
}
