package heatwake.dashboard.demo.plant.fault;

/** How bad a fault is. */
public enum Severity {
  MILD,
  MODERATE,
  SEVERE
}
