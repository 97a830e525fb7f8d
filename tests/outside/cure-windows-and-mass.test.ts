import { describe, expect, it } from 'vitest';
import type { PotLifePoint } from '@/lib/cure/adhesive-sheet';
import { cureLanes } from '@/lib/cure/cure-lanes';
import { exotherm } from '@/lib/cure/exotherm';
import { compactCupSurfaceMm2, cupHistory } from '@/lib/cure/heat-balance';
import { potLife } from '@/lib/cure/pot-life';
import { recoatWindow } from '@/lib/cure/recoat-window';
import { release } from '@/lib/cure/release';
import { HOUR_MS } from '@/lib/units/instant';
import { courseOfSteps, law, START_AT, sheet } from '../lib/cure/make-course';

/** Windows, pot lives and cups against the check values of the project's reference pack (computed there with scipy). */

describe('two-sided window, opens 4 h and closes 24 h at 25 degC, 45 to 65 kJ/mol (pack 2.4)', () => {
  const coat = sheet({ ...law(), milestoneHours: { 'recoat-from': 4, 'recoat-by': 24 } });
  const clock = { setAt: START_AT, mixedAt: START_AT, sheet: coat };

  it.each([
    [15, 7.51, 9.94, 45.06, 24],
    [18, 6.19, 7.51, 37.13, 24],
    [22, 4.81, 5.22, 28.86, 24],
    [30, 2.6, 2.97, 15.57, 15.57],
  ])(
    'at %d degC it opens between %d and %d h, closes at %d h at the earliest, and is shown open until %d h',
    (temperatureC, opensEarliest, opensLatest, closesEarliest, shownUntil) => {
      const lanes = cureLanes(courseOfSteps([[100, temperatureC]]), coat);
      const hours = (at: number | null) => ((at ?? Number.NaN) - START_AT) / HOUR_MS;
      const opens = release(clock, lanes, 'recoat-from');
      if (opens.kind !== 'release') throw new Error('no opening');
      expect(hours(opens.earliestAt)).toBeCloseTo(opensEarliest, 2);
      expect(hours(opens.latestAt)).toBeCloseTo(opensLatest, 2);
      expect(hours(lanes.fast.instantAtAge(START_AT, 24))).toBeCloseTo(closesEarliest, 2);
      expect(hours(recoatWindow(clock, lanes).closesAt)).toBeCloseTo(shownUntil, 2);
    },
  );
});

describe('pot life from 30 min at 100 g and 25 degC (pack 3.3)', () => {
  const point: PotLifePoint = { minutes: 30, massG: 100, temperatureC: 25, criterion: 'standard-cup' };
  const glue = sheet({ potLife: [point] });

  it.each([
    [9, 22, 40.7, 60.84, 102.61],
    [9, 30, 21.96, 33.68, 58.26],
    [9, 15, 63.53, 104.87, 195.26],
    [20, 20, 44.31, 60.43, 89.32],
    [100, 20, 40.89, 43.8, 46.92],
    [100, 30, 19.47, 20.81, 22.24],
    [300, 25, 19.33, 24.08, 28.4],
    [300, 30, 12.54, 16.7, 21.05],
    [5, 22, 41.91, 68.43, 129.8],
  ])('%d g at %d degC: %d, %d, %d min', (massG, temperatureC, lower, central, upper) => {
    const life = potLife(glue, massG, temperatureC);
    if (!life.ok) throw new Error(life.code);
    expect(life.lowerMinutes).toBeCloseTo(lower, 2);
    expect(life.centralMinutes).toBeCloseTo(central, 2);
    expect(life.upperMinutes).toBeCloseTo(upper, 2);
  });

  it.each([
    [25, [75, 54.62, 47.55, 41.39, 34.46, 30, 26.12, 21.74]],
    [20, [109.5, 79.74, 69.42, 60.43, 50.31, 43.8, 38.13, 31.74]],
  ])('central values at %d degC from 1 g (capped as a film) to 500 g', (temperatureC, expected) => {
    const minutes = [1, 5, 10, 20, 50, 100, 200, 500].map((massG) => {
      const life = potLife(glue, massG, temperatureC);
      return life.ok ? life.centralMinutes : Number.NaN;
    });
    for (const [index, value] of expected.entries()) expect(minutes[index]).toBeCloseTo(value, 2);
  });

  it('two masses, 30 min at 100 g and 18 min at 500 g: b 0.317394, 24.0755 min at 200 g, 50.0 at 20 g (extrapolated)', () => {
    const two = sheet({ potLife: [point, { ...point, minutes: 18, massG: 500 }] });
    expect(potLife(two, 200, 25)).toMatchObject({
      basis: 'masses',
      centralMinutes: expect.closeTo(24.0755, 4),
      isExtrapolated: false,
    });
    expect(potLife(two, 20, 25)).toMatchObject({ centralMinutes: expect.closeTo(50, 2), isExtrapolated: true });
  });

  it('two temperatures, 45 min at 20 and 22 min at 30 degC: 31.276029 min at 25, 65.568715 at 15 degC (pack 2.1)', () => {
    const two = sheet({
      potLife: [
        { ...point, minutes: 45, temperatureC: 20 },
        { ...point, minutes: 22, temperatureC: 30 },
      ],
    });
    expect(potLife(two, 100, 25)).toMatchObject({
      basis: 'temperatures',
      centralMinutes: expect.closeTo(31.276029, 5),
    });
    expect(potLife(two, 100, 15)).toMatchObject({ centralMinutes: expect.closeTo(65.568715, 5) });
  });
});

describe('a cup that warms itself (pack 3.2)', () => {
  const THIRTY_MINUTES = 0.00146020170157688;
  const FIVE_MINUTES = 0.00796320279311085;
  const cup = (rate: number, massG: number, roomC: number, startC = roomC) =>
    cupHistory(rate, { massG, roomC, startC, surfaceMm2: compactCupSurfaceMm2(massG) });

  it('100 g have 0.01119230 m2 in a compact cup', () => {
    expect(compactCupSurfaceMm2(100) * 1e-6).toBeCloseTo(0.0111923, 7);
  });

  it.each([
    [100, 25, 30.0, 31.862, 24.473, 220.02],
    [20, 20, 50.982, 56.132, 48.812, 192.25],
    [10, 25, 34.355, 37.706, 29.641, 200.45],
  ])('%d g at %d degC: thick %d, gel %d, 40 degC %d min, peak %d degC', (massG, roomC, thick, gel, at40, peak) => {
    const history = cup(THIRTY_MINUTES, massG, roomC);
    expect(history.thickMinutes).toBeCloseTo(thick, 2);
    expect(history.gelMinutes).toBeCloseTo(gel, 2);
    expect(history.at40CMinutes).toBeCloseTo(at40, 2);
    expect(Math.abs(history.peakC - peak)).toBeLessThan(0.02);
  });

  it.each([
    [15, 10, 91.1, 105.0, 113.3, 131.8],
    [15, 100, 70.9, 69.8, 76.4, 196.3],
    [20, 5, 59.3, 62.5, 71.0, 154.3],
    [20, 100, 45.2, 41.3, 48.2, 209.8],
    [25, 20, 32.6, 27.5, 35.3, 208.6],
    [25, 500, 28.6, 22.9, 30.1, 226.1],
    [30, 100, 20.5, 13.6, 21.8, 228.5],
  ])('room %d degC, %d g: thick %d, 40 degC %d, gel %d, peak %d', (roomC, massG, thick, at40, gel, peak) => {
    const history = cup(THIRTY_MINUTES, massG, roomC);
    expect(history.thickMinutes).toBeCloseTo(thick, 1);
    expect(history.at40CMinutes).toBeCloseTo(at40, 1);
    expect(history.gelMinutes).toBeCloseTo(gel, 1);
    expect(history.peakC).toBeCloseTo(peak, 1);
  });

  it.each([
    [15, 140.5, 323.6],
    [20, 95.0, 218.8],
    [25, 65.1, 149.9],
    [30, 45.1, 103.9],
  ])('a film at %d degC keeps the room: thick %d, gel %d min, never warm', (roomC, thick, gel) => {
    const film = cupHistory(THIRTY_MINUTES, { massG: 1, roomC, startC: roomC, surfaceMm2: Number.POSITIVE_INFINITY });
    expect(film.thickMinutes).toBeCloseTo(thick, 1);
    expect(film.gelMinutes).toBeCloseTo(gel, 1);
    expect(film.at40CMinutes).toBeNull();
    expect(film.peakC).toBe(roomC);
  });

  it.each([
    [15, 10.6],
    [20, 7.2],
    [25, 5.0],
    [30, 3.5],
  ])('the five-minute set, 100 g at %d degC: thick at %d min', (roomC, thick) => {
    expect(cup(FIVE_MINUTES, 100, roomC).thickMinutes).toBeCloseTo(thick, 1);
  });

  it.each([
    [15, 55.99],
    [20, 45.21],
    [30, 25.18],
  ])('100 g in a room of 20 degC, parts at %d degC: thick at %d min', (startC, thick) => {
    expect(cup(THIRTY_MINUTES, 100, 20, startC).thickMinutes).toBeCloseTo(thick, 2);
  });

  it('is set by the sheet: 30 min at 100 g and 25 degC give the 30-minute set back', () => {
    const glue = { potLife: [{ minutes: 30, massG: 100, temperatureC: 25, criterion: 'viscosity-doubled' as const }] };
    const result = exotherm(glue, { massG: 20, roomC: 20, startC: 20 });
    if (!result.ok) throw new Error(result.code);
    expect(result.endOfUseMinutes).toBeCloseTo(50.982, 2);
    expect(result.gelMinutes).toBeCloseTo(56.132, 2);
    expect(result.level).toBe('smoking');
  });
});
