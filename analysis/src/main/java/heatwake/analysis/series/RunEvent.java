package heatwake.analysis.series;

import java.util.OptionalLong;

/**
 * Something that happened to the recording itself.
 *
 * @param kind what kind of thing
 * @param subject the source, channel or part it happened to
 * @param startMs when it began, UTC milliseconds
 * @param endMs when it was over; empty while it lasts
 * @param count how many times in that span, at least 1
 * @param text what a person should read
 */
public record RunEvent(
    EventKind kind, String subject, long startMs, OptionalLong endMs, long count, String text) {}
