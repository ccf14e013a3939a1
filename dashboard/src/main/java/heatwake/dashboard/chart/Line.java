package heatwake.dashboard.chart;

import heatwake.analysis.finding.Trace;
import heatwake.analysis.quantity.Channel;
import heatwake.dashboard.present.Names;
import java.awt.Color;

/** What a line of a chart shows. Each has one colour wherever it is drawn. */
sealed interface Line {
  String name();

  Color color();

  /** A channel as it was read. */
  record OfChannel(Channel channel) implements Line {
    @Override
    public String name() {
      return Names.of(channel);
    }

    @Override
    public Color color() {
      return switch (channel) {
        case WATER_OUT, PRESSURE_DISCHARGE -> Palette.VERMILION;
        case WATER_IN, PRESSURE_SUCTION, FLOW_HEATER, AIR_IN -> Palette.BLUE;
        case WATER_RETURN, TEMP_DISCHARGE -> Palette.PURPLE;
        case WATER_POOL, AIR_AMBIENT, TEMP_SUCTION -> Palette.GREEN;
        case FLOW_TOTAL, AIR_OUT, HUMIDITY_IN -> Palette.SKY;
        case TEMP_LIQUID -> Palette.ORANGE;
        case POWER, CURRENT, VOLTAGE, ENERGY, PRESSURE_FILTER, WIND_SPEED, PUMP_ON, FLOW_SWITCH ->
            Palette.BLACK;
      };
    }
  }

  /** A derived quantity. */
  record OfTrace(Trace.Kind kind) implements Line {
    @Override
    public String name() {
      return Names.of(kind);
    }

    @Override
    public Color color() {
      return switch (kind) {
        case HEAT, CONDENSING -> Palette.VERMILION;
        case HEATER_FLOW, HEATER_SHARE, EVAPORATING -> Palette.BLUE;
        case RISE -> Palette.PURPLE;
      };
    }
  }

  /** Heat the nameplate promises, drawn over steady spans. */
  record OfExpectedHeat() implements Line {
    @Override
    public String name() {
      return "nameplate heat";
    }

    @Override
    public Color color() {
      return Palette.ORANGE;
    }
  }

  static Line of(Channel channel) {
    return new OfChannel(channel);
  }

  static Line of(Trace.Kind kind) {
    return new OfTrace(kind);
  }
}
