import { describe, expect, it } from 'vitest';
import { dewPointC, dewPointCheck } from '@/lib/cure/dew-point';

/** Dew points against printed tables, which give a tenth of a degree. */

describe('published dew points', () => {
  // DIN 4108-3, table of dew-point temperatures over air temperature and relative humidity: from memory.
  it.each([
    [10, [-6.0, -4.2, -2.6, -1.2, 0.1, 1.4, 2.6, 3.7, 4.8, 5.8, 6.7, 7.6, 8.4, 9.2]],
    [20, [1.9, 4.1, 6.0, 7.7, 9.3, 10.7, 12.0, 13.2, 14.4, 15.4, 16.4, 17.4, 18.3, 19.1]],
    [25, [6.2, 8.5, 10.5, 12.2, 13.9, 15.3, 16.7, 18.0, 19.1, 20.3, 21.3, 22.3, 23.2, 24.1]],
    [30, [10.5, 12.9, 14.9, 16.8, 18.4, 20.0, 21.4, 22.7, 23.9, 25.1, 26.2, 27.2, 28.2, 29.1]],
  ])('air of %d degC at 30 to 95 %% (DIN 4108-3)', (airC, expected) => {
    for (const [index, value] of expected.entries()) {
      // Above freezing to the printed tenth (and the rounding of its own formula); below it the table counts over ice.
      const tolerance = value >= 0 ? 0.11 : 1;
      expect(Math.abs(dewPointC(airC, 30 + 5 * index) - value)).toBeLessThanOrEqual(tolerance);
    }
  });

  it('16.1 degC with a dew point of 10.6 degC is 70 % (public unit test of an hourly weather record reader, seen)', () => {
    expect(Math.abs(dewPointC(16.1, 70) - 10.6)).toBeLessThan(0.1);
  });

  it('67.89 degF at 51 % has a dew point of 49.08 degF (public unit test of a sensor page, seen)', () => {
    const airC = (67.89 - 32) / 1.8;
    expect(Math.abs(dewPointC(airC, 51) * 1.8 + 32 - 49.08)).toBeLessThan(0.5);
  });

  it('10.6 degC at 37 % has a dew point of 26 degF (unit test of the MetPy library, from memory)', () => {
    expect(Math.round(dewPointC(10.6, 37) * 1.8 + 32)).toBe(26);
  });

  it('ISO 8502-4: the surface must be 3 degC above; 12.3 degC passes and 12.2 does not at 20 degC and 50 %', () => {
    expect(dewPointCheck({ airC: 20, humidityPct: 50, surfaceC: 12.3 }).kind).toBe('ok');
    expect(dewPointCheck({ airC: 20, humidityPct: 50, surfaceC: 12.2 }).kind).toBe('too-close');
  });
});
