package heatwake.analysis.finding;

/** Whose side a trouble is on. */
public enum Side {
  HEALTHY("healthy"),
  WATER("water"),
  REFRIGERANT("refrigerant"),
  AIRFLOW("airflow"),
  ELECTRICAL("electrical"),
  CONTROL("control"),
  SCHEDULE("schedule"),
  POOL("pool"),
  MEASUREMENT("measurement"),
  UNDECIDED("undecided");

  private final String id;

  Side(String id) {
    this.id = id;
  }

  public String id() {
    return id;
  }
}
