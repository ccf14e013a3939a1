package heatwake.collector.unattended;

import heatwake.collector.recorder.Recorder;
import heatwake.collector.recorder.RecorderSettings;
import heatwake.collector.rig.RigReader;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** A recorder with an attendant in a process of its own, as a service manager starts one. */
final class BeatingRecorder {
  private BeatingRecorder() {}

  public static void main(String[] arguments) throws InterruptedException {
    try (Recorder recorder = Recorder.open(Path.of(arguments[0]), RecorderSettings.USUAL)) {
      recorder.begin(RigReader.parse("[site]\nname = \"Heron Lane\"\n", "rig.toml"));
      try (Attendant attendant = new Attendant(recorder, List.of(), (site, run, flag) -> {})) {
        attendant.start();
        TimeUnit.SECONDS.sleep(60);
      }
    }
  }
}
