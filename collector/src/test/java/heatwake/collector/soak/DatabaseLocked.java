package heatwake.collector.soak;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;

/** Another program holds the database's lock. */
final class DatabaseLocked implements Fault {
  @Override
  public String name() {
    return "database locked";
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + site.database());
        Statement statement = connection.createStatement()) {
      statement.execute("PRAGMA busy_timeout = 10000");
      statement.execute("BEGIN IMMEDIATE");
      site.pause(8000);
      statement.execute("ROLLBACK");
    }
  }
}
