package heatwake.analysis.rule.measurement;

import heatwake.analysis.finding.Flag;
import heatwake.analysis.finding.Severity;
import heatwake.analysis.finding.Side;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.rule.Evidence;
import heatwake.analysis.rule.Outcome;
import heatwake.analysis.rule.Rule;
import heatwake.analysis.rule.Wording;
import heatwake.analysis.series.EventKind;
import heatwake.analysis.series.Recording;
import heatwake.analysis.series.RunEvent;
import heatwake.analysis.series.Series;
import heatwake.analysis.timeline.BandSilences;
import heatwake.analysis.timeline.Timeline;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Readings missing for longer than three intervals. */
public final class DataGap implements Rule {
  /** Missing for less than this in all is worth knowing, not mending, s; ours. */
  private static final double SMALL_S = 300;

  /** Missing for less than this share of the run likewise; ours. */
  private static final double SMALL_SHARE = 0.01;

  @Override
  public String id() {
    return "data-gap";
  }

  @Override
  public String summary() {
    return "Readings are missing for longer than three intervals.";
  }

  @Override
  public String needs() {
    return "any reading";
  }

  @Override
  public String limits() {
    return "A silence longer than three of the channel's usual intervals and 60 s, longer than"
        + " twice what 99 in 100 of its intervals keep to (ours: a probe that often skips is not"
        + " silent), and longer than single readings lost by chance explain: with a share p of N"
        + " readings lost, a hole of k is met N p^k times; under 0.01 it is none of them (ours). States and values that are sent only on change are exempt:"
        + " so is a silence through which others were read and after which a value is within twice its usual"
        + " change of the one before, or that is no longer than 10 min (ours; signs of life"
        + " come every 10 to 60 min: common practice) or others after which it is, if its readings"
        + " repeat themselves in under 5 % and change by under 0.3 of the usual in under 10 %, or, of 60 or more,"
        + " by under 0.12 in under 3 % (a dead band; ours, normal noise does so in 16 and 6 %).";
  }

  @Override
  public Outcome evaluate(Evidence evidence) {
    Recording recording = evidence.recording();
    Map<Channel, List<Silence>> silences = new EnumMap<>(Channel.class);
    for (Series series : recording.series().values()) {
      List<Silence> found = Silence.in(series, recording.startMs(), recording.endMs());
      if (!found.isEmpty()) {
        Optional<BandSilences> silent = BandSilences.of(series, recording);
        found =
            found.stream()
                .filter(silence -> silent.filter(one -> silence.isExplained(series, one)).isEmpty())
                .toList();
      }
      if (!found.isEmpty()) {
        silences.put(series.channel(), found);
      }
    }
    List<Flag> flags = new ArrayList<>();
    while (!silences.isEmpty()) {
      List<Channel> together = takeTogether(silences);
      flags.add(flag(recording, silences.get(together.get(0)), together));
      together.forEach(silences::remove);
    }
    return Outcome.of(flags);
  }

  /** The channel silent longest, and those that were silent at the same times. */
  private static List<Channel> takeTogether(Map<Channel, List<Silence>> silences) {
    Channel worst =
        silences.keySet().stream()
            .max(Comparator.comparingDouble(channel -> total(silences.get(channel))))
            .orElseThrow();
    List<Channel> together = new ArrayList<>();
    together.add(worst);
    for (Channel channel : silences.keySet()) {
      if (channel != worst && areTogether(silences.get(worst), silences.get(channel))) {
        together.add(channel);
      }
    }
    return together;
  }

  private static double total(List<Silence> silences) {
    return silences.stream().mapToDouble(Silence::lengthS).sum();
  }

  private static boolean areTogether(List<Silence> some, List<Silence> others) {
    return others.stream().allMatch(other -> some.stream().anyMatch(other::sharesTimeWith));
  }

  private Flag flag(Recording recording, List<Silence> silences, List<Channel> channels) {
    double totalS = total(silences);
    double runS = (recording.endMs() - recording.startMs()) / 1e3;
    Silence longest =
        silences.stream().max(Comparator.comparingDouble(Silence::lengthS)).orElseThrow();
    Channel named = longest.channel();
    double usualS = Timeline.usualIntervalMs(recording.series().get(named)) / 1e3;
    boolean all = channels.size() > 1 && channels.size() == recording.series().size();
    String who =
        all ? "any channel" : channels.stream().map(Channel::id).collect(Collectors.joining(", "));
    String text =
        silences.size() == 1
            ? "No reading of "
                + who
                + " for "
                + Wording.duration(longest.lengthS())
                + "; usual is every "
                + Wording.duration(usualS)
            : silences.size()
                + " gaps in "
                + (all ? "all channels" : who)
                + ", together "
                + Wording.duration(totalS)
                + ", the longest "
                + Wording.duration(longest.lengthS())
                + "; usual is every "
                + Wording.duration(usualS);
    return new Flag(
        id(),
        Side.MEASUREMENT,
        totalS < SMALL_S || totalS < SMALL_SHARE * runS ? Severity.INFO : Severity.WARNING,
        silences.get(0).fromMs(),
        silences.get(silences.size() - 1).toMs(),
        text,
        causes(recording, longest, all),
        all
            ? "See whether the logger lost its supply, and whether it starts again by itself."
            : "Look at battery, plug and radio range of the probe.",
        Set.copyOf(channels));
  }

  private static List<String> causes(Recording recording, Silence longest, boolean all) {
    List<String> causes = new ArrayList<>();
    for (RunEvent event : recording.events()) {
      boolean within =
          event.startMs() <= longest.toMs()
              && event.endMs().orElse(event.startMs()) >= longest.fromMs();
      boolean concerns = all || event.subject().equals(longest.channel().id());
      boolean tells =
          switch (event.kind()) {
            case SOURCE_LOST, RECORDER_STOPPED, RECORDER_STARTED, STORE_BLOCKED -> true;
            case PROBE_SILENT -> concerns;
            default -> false;
          };
      if (within && tells && causes.size() < 2) {
        causes.add(asNoted(event));
      }
    }
    if (all) {
      causes.add("logger without supply, stopped, or its clock set forward");
      causes.add("broker or serial line lost");
    } else {
      causes.add("battery of the probe empty, or out of radio range");
      causes.add("plug or cable loose");
    }
    return causes;
  }

  /** What the recorder noted; most texts name their subject themselves. */
  private static String asNoted(RunEvent event) {
    String text =
        event.text().contains(event.subject())
            ? event.text()
            : event.subject() + ": " + event.text();
    return event.kind() == EventKind.PROBE_SILENT ? "the recorder noted: " + text : text;
  }
}
