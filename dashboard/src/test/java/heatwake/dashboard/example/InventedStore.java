package heatwake.dashboard.example;

import heatwake.analysis.quantity.Channel;
import heatwake.analysis.series.Note;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.Series;
import heatwake.collector.probe.Reading;
import heatwake.collector.rig.RigFile;
import heatwake.collector.rig.RigReader;
import heatwake.collector.store.Store;
import java.util.ArrayList;
import java.util.List;

/** Puts the invented night, or its beginning, into a store. */
public final class InventedStore {
  private InventedStore() {}

  public static RigFile rig() {
    StringBuilder text =
        new StringBuilder(
            """
            [site]
            name = "Heron Lane"
            altitude = "40 m"
            [pool]
            volume = "62 m3"
            setpoint = "28 Cel"
            [heater]
            label = "unit 1"
            refrigerant = "R-410A"
            flow-min = "90 L/min"
            flow-max = "200 L/min"
            voltage = "230 V"
            current-max = "16 A"
            breaker = "20 A"
            restart-delay = "4 min"
            [[heater.rating]]
            air = "27 Cel"
            water = "27 Cel"
            heat = "16.5 kW"
            power = "2.75 kW"
            [[heater.rating]]
            air = "15 Cel"
            water = "26 Cel"
            heat = "12.1 kW"
            power = "2.5 kW"
            """);
    for (Channel channel : InventedNight.recording().series().keySet()) {
      text.append("[[probe]]\nchannel = \"").append(channel.id()).append("\"\n");
      text.append("unit = \"").append(channel.storedUnit().code()).append("\"\n");
    }
    return RigReader.parseForImport(text.toString(), "heron-lane.toml");
  }

  /** Begins a run with the readings of the first minutes of the night, and leaves it open. */
  public static long begin(Store store, double minutes) {
    Recording night = InventedNight.recording();
    long run = store.beginRun(rig(), night.startMs());
    append(store, run, 0, minutes);
    for (Note note : night.notes()) {
      if (note.timeMs() < InventedNight.minute(minutes)) {
        store.addNote(run, note.timeMs(), note.text());
      }
    }
    return run;
  }

  /** Stores the readings of some minutes of the night. */
  public static void append(Store store, long run, double fromMinute, double toMinute) {
    append(
        store,
        run,
        InventedNight.recording(),
        InventedNight.minute(fromMinute),
        InventedNight.minute(toMinute));
  }

  /** Stores the readings that a recording holds from one moment up to another. */
  public static void append(Store store, long run, Recording recording, long fromMs, long toMs) {
    List<Reading> batch = new ArrayList<>();
    for (Series series : recording.series().values()) {
      int end = series.firstAtOrAfter(toMs);
      for (int i = series.firstAtOrAfter(fromMs); i < end; i++) {
        double stored = series.channel().storedUnit().fromSi(series.value(i));
        batch.add(new Reading(series.channel(), series.timeMs(i), stored, true));
      }
    }
    store.append(run, batch);
  }
}
