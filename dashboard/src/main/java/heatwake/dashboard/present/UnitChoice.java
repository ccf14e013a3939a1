package heatwake.dashboard.present;

import heatwake.analysis.finding.Findings;
import heatwake.analysis.finding.Trace;
import heatwake.analysis.quantity.Channel;
import heatwake.analysis.quantity.Quantity;
import heatwake.analysis.quantity.Unit;

/** Which units a person reads in. */
public enum UnitChoice {
  METRIC {
    @Override
    public DisplayUnit of(Quantity quantity) {
      return switch (quantity) {
        case TEMPERATURE -> unit(quantity, "Cel", 1);
        case TEMPERATURE_DIFFERENCE -> unit(quantity, "K", 2);
        case FLOW -> unit(quantity, "L/min", 0);
        case PRESSURE -> unit(quantity, "kPa", 0);
        default -> shared(quantity);
      };
    }

    @Override
    public DisplayUnit refrigerantPressure() {
      return unit(Quantity.PRESSURE, "MPa", 2);
    }

    @Override
    public String condensate(double kgPerS) {
      return Figure.fixed(kgPerS * SECONDS_PER_HOUR, 1) + " kg/h";
    }

    @Override
    public String sentence(String metric) {
      return metric;
    }
  },
  US {
    @Override
    public DisplayUnit of(Quantity quantity) {
      return switch (quantity) {
        case TEMPERATURE -> unit(quantity, "[degF]", 1);
        case TEMPERATURE_DIFFERENCE -> unit(quantity, "[degF]", 1);
        case FLOW -> unit(quantity, "[gal_us]/min", 1);
        case PRESSURE -> unit(quantity, "[psi]", 1);
        case VOLUME -> unit(quantity, "[gal_us]", 0);
        case AREA -> unit(quantity, "[sft_i]", 0);
        case SPEED -> unit(quantity, "[mi_i]/h", 1);
        case LENGTH -> unit(quantity, "[ft_i]", 0);
        default -> shared(quantity);
      };
    }

    @Override
    public DisplayUnit refrigerantPressure() {
      return unit(Quantity.PRESSURE, "[psi]", 0);
    }

    @Override
    public String condensate(double kgPerS) {
      double m3PerHour = kgPerS * SECONDS_PER_HOUR / WATER_KG_PER_M3;
      return Figure.fixed(Unit.of(Quantity.VOLUME, "[gal_us]").fromSi(m3PerHour), 1) + " gal/h";
    }

    @Override
    public String sentence(String metric) {
      return UsSentence.of(metric);
    }
  };

  private static final int SECONDS_PER_HOUR = 3600;

  /** As it drips off a coil; a tenth of a gallon an hour does not ask for more. */
  private static final double WATER_KG_PER_M3 = 1000;

  /** How values of a quantity are shown. */
  public abstract DisplayUnit of(Quantity quantity);

  /** How a refrigerant's pressure is shown; it is ten times that of the water. */
  public abstract DisplayUnit refrigerantPressure();

  /**
   * Water taken out of the air, as it is caught under the drain.
   *
   * @param kgPerS its mass flow, kg/s
   */
  public abstract String condensate(double kgPerS);

  /** A sentence of the analysis, with its figures in these units. */
  public abstract String sentence(String metric);

  /** Findings whose sentences have their figures in these units. */
  public Findings worded(Findings findings) {
    return findings.reworded(this::sentence);
  }

  /** How readings of a channel are shown. */
  public DisplayUnit of(Channel channel) {
    return switch (channel) {
      case PRESSURE_DISCHARGE, PRESSURE_SUCTION -> refrigerantPressure();
      default -> of(channel.quantity());
    };
  }

  /** How a derived quantity is shown. */
  public DisplayUnit of(Trace.Kind kind) {
    return switch (kind) {
      case RISE -> of(Quantity.TEMPERATURE_DIFFERENCE);
      case HEATER_FLOW -> of(Quantity.FLOW);
      case HEAT -> of(Quantity.POWER);
      case HEATER_SHARE -> of(Quantity.RATIO);
      case CONDENSING, EVAPORATING -> of(Quantity.TEMPERATURE);
    };
  }

  private static DisplayUnit shared(Quantity quantity) {
    return switch (quantity) {
      case POWER -> unit(quantity, "kW", 2);
      case ENERGY -> unit(quantity, "kW.h", 1);
      case CURRENT -> unit(quantity, "A", 1);
      case VOLTAGE -> unit(quantity, "V", 0);
      case RESISTANCE -> unit(quantity, "Ohm", 1);
      case RATIO -> unit(quantity, "%", 0);
      case STATE -> unit(quantity, "1", 0);
      case SALINITY -> unit(quantity, "g/kg", 1);
      case VOLUME -> unit(quantity, "m3", 0);
      case AREA -> unit(quantity, "m2", 0);
      case DURATION -> unit(quantity, "s", 0);
      case SPEED -> unit(quantity, "m/s", 1);
      case LENGTH -> unit(quantity, "m", 0);
      case TEMPERATURE, TEMPERATURE_DIFFERENCE, FLOW, PRESSURE ->
          throw new IllegalStateException(quantity.label() + " differs between unit choices");
    };
  }

  private static DisplayUnit unit(Quantity quantity, String code, int decimals) {
    return new DisplayUnit(Unit.of(quantity, code), decimals);
  }
}
