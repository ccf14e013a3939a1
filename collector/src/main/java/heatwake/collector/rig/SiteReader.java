package heatwake.collector.rig;

import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.site.Pool;
import heatwake.analysis.site.PumpPoint;
import heatwake.analysis.site.Site;
import heatwake.analysis.site.Tariff;
import heatwake.analysis.water.Salt;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Reads what a rig says of site, pool, tariff and pump. Limits are ours, set wide. */
final class SiteReader {
  private SiteReader() {}

  static Site site(TomlTable root, String fileName) {
    Optional<TomlTable> table = root.table("site");
    table.ifPresent(site -> site.only(List.of("name", "altitude")));
    String name = table.flatMap(site -> site.text("name")).orElseGet(() -> nameOf(fileName));
    double altitudeM =
        table
            .map(site -> site.measure("altitude", Quantity.LENGTH, -450, 6000).orElse(0))
            .orElse(0.);
    return new Site(name.strip(), altitudeM);
  }

  private static String nameOf(String fileName) {
    Path last = Path.of(fileName).getFileName();
    String name = last == null ? "" : last.toString().replaceFirst("\\.toml$", "");
    return name.isBlank() ? "site" : name;
  }

  static Pool pool(TomlTable root) {
    return root.table("pool")
        .map(
            pool -> {
              pool.only(List.of("volume", "surface", "covered", "salt", "setpoint"));
              return new Pool(
                  pool.measure("volume", Quantity.VOLUME, 0.1, 20_000),
                  pool.measure("surface", Quantity.AREA, 0.1, 20_000),
                  pool.flag("covered", false),
                  pool.measure("salt", Quantity.SALINITY, 0, Salt.HIGHEST_KG_PER_KG).orElse(0),
                  pool.measure("setpoint", Quantity.TEMPERATURE, 274.15, 333.15));
            })
        .orElse(Pool.UNKNOWN);
  }

  static Optional<Tariff> tariff(TomlTable root) {
    return root.table("tariff")
        .map(
            tariff -> {
              tariff.only(List.of("price", "currency"));
              double price =
                  tariff
                      .number("price")
                      .orElseThrow(
                          () -> tariff.mistake("no price in [tariff]; add price = 0.21 (per kWh)"));
              if (price < 0) {
                throw tariff.mistake("price", "price is below zero; give the price of one kWh");
              }
              return new Tariff(price, tariff.text("currency").orElse(""));
            });
  }

  static List<PumpPoint> pumpCurve(TomlTable root) {
    Optional<TomlTable> pump = root.table("pump");
    if (pump.isEmpty()) {
      return List.of();
    }
    List<PumpPoint> points = new ArrayList<>();
    for (TomlTable table : pump.get().only(List.of("point")).tables("point")) {
      table.only(List.of("flow", "head"));
      PumpPoint point =
          new PumpPoint(
              table.needMeasure("flow", Quantity.FLOW, 0, 1),
              table.needMeasure("head", Quantity.PRESSURE, 0, 1e6));
      for (PumpPoint other : points) {
        if (other.flowM3PerS() == point.flowM3PerS()) {
          throw table.mistake("flow", "a second point of the pump curve at one flow; drop one");
        }
        if ((other.flowM3PerS() < point.flowM3PerS()) != (other.headPa() >= point.headPa())) {
          throw table.mistake(
              "head", "the pump's head rises with flow; a pump curve falls, check both columns");
        }
      }
      points.add(point);
    }
    points.sort(Comparator.comparingDouble(PumpPoint::flowM3PerS));
    return points;
  }
}
