package heatwake.analysis.rule.electrical;

import heatwake.analysis.quantity.Channel;
import java.util.Locale;

/**
 * Short draws of a motor while the compressor never runs: the control closes the contactor, so heat
 * is called for, but the motor does not turn and its protector opens.
 *
 * @param number how many were read
 * @param most greatest draw read among them, W or A
 * @param channel what told of them: power or current
 */
record StartTries(int number, double most, Channel channel) {
  /** So many are no chance; ours. */
  static final int SEVERAL = 3;

  /** Whether they show that heat is called for. */
  boolean areSeveral() {
    return number >= SEVERAL;
  }

  /** How often and how strongly, in words. */
  String words() {
    return number
        + " tries drew up to "
        + (channel == Channel.POWER
            ? Math.round(most) + " W"
            : String.format(Locale.ROOT, "%.1f A", most));
  }
}
