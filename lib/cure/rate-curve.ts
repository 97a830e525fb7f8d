/**
 * The rate of cure as a function of temperature, relative to the rate at the reference temperature (1 there).
 * Besides the rate, a curve tells its slopes, from which the integral over a ramp is exact to 1e-9 at one
 * exponential a reading (see `ramp-age.ts`).
 */
export interface RateCurve {
  /** Relative rate at `temperatureC`; 0 or more. */
  rateAt(temperatureC: number): number;
  /** First derivative divided by the rate, per degree. */
  logSlopeAt(temperatureC: number): number;
  /** Second derivative divided by the rate, per degree squared. */
  logCurvatureAt(temperatureC: number): number;
}

/** Molar gas constant, J/(mol K). Source: CODATA 2018, exact (8.314462618...); from memory. */
export const GAS_CONSTANT = 8.314462618;
/** 0 degC in kelvin. */
export const ZERO_C_IN_K = 273.15;

/**
 * Arrhenius: `exp(Ea/R (1/Tref - 1/T))`. `activationEnergyKjPerMol` in kJ/mol, `referenceC` in degC.
 * At and below absolute zero there is no reaction: rate 0.
 * Source: ASTM C1074, the form of equivalent age. Example: 55 kJ/mol, 25 degC: 0.6849 at 20 degC.
 */
export function arrheniusCurve(activationEnergyKjPerMol: number, referenceC: number): RateCurve {
  const q = (activationEnergyKjPerMol * 1000) / GAS_CONSTANT;
  return new ReciprocalCurve(q / (referenceC + ZERO_C_IN_K), q, ZERO_C_IN_K);
}

/** `exp(a - q / (t + zero))`: Arrhenius with any constants. */
class ReciprocalCurve implements RateCurve {
  constructor(
    private readonly a: number,
    private readonly q: number,
    private readonly zero: number,
  ) {}

  rateAt(temperatureC: number): number {
    const kelvin = temperatureC + this.zero;
    return kelvin > 0 ? Math.exp(this.a - this.q / kelvin) : 0;
  }

  logSlopeAt(temperatureC: number): number {
    const kelvin = temperatureC + this.zero;
    return this.q / (kelvin * kelvin);
  }

  logCurvatureAt(temperatureC: number): number {
    const kelvin = temperatureC + this.zero;
    const slope = this.q / (kelvin * kelvin);
    return slope * (slope - 2 / kelvin);
  }
}

/** `2 ** ((t - referenceC) / doublingC)`: the rate doubles every `doublingC` degrees. */
export function doublingCurve(doublingC: number, referenceC: number): RateCurve {
  return new ExponentialCurve(Math.LN2 / doublingC, referenceC);
}

class ExponentialCurve implements RateCurve {
  constructor(
    private readonly slope: number,
    private readonly referenceC: number,
  ) {}

  rateAt(temperatureC: number): number {
    return Math.exp(this.slope * (temperatureC - this.referenceC));
  }

  logSlopeAt(): number {
    return this.slope;
  }

  logCurvatureAt(): number {
    return this.slope * this.slope;
  }
}

/** An hour is an hour at any temperature. */
export const PLAIN_HOURS_CURVE: RateCurve = {
  rateAt: () => 1,
  logSlopeAt: () => 0,
  logCurvatureAt: () => 0,
};
