package heatwake.collector.soak;

/** A person writes a note into the run that is being recorded. */
final class NoteWritten implements Fault {
  @Override
  public String name() {
    return "note written";
  }

  @Override
  public void strike(SoakedSite site) throws Exception {
    site.notes().write();
  }
}
