package heatwake.dashboard.present;

/**
 * What to do, and how that stands.
 *
 * @param words short plain sentences
 * @param tone how it stands
 */
record Counsel(String words, Tone tone) {}
