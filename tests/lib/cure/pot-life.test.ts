import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { PotLifePoint } from '@/lib/cure/adhesive-sheet';
import { potLife } from '@/lib/cure/pot-life';
import { sheet } from './make-course';

const point: PotLifePoint = { minutes: 30, massG: 100, temperatureC: 25, criterion: 'standard-cup' };
const glue = (...potLives: PotLifePoint[]) => sheet({ potLife: potLives });

function minutes(...args: Parameters<typeof potLife>): readonly [number, number, number] {
  const life = potLife(...args);
  if (!life.ok) throw new Error(life.code);
  return [life.lowerMinutes, life.centralMinutes, life.upperMinutes];
}

describe('pot life', () => {
  it("is the sheet's own figure at the sheet's own mass and temperature", () => {
    expect(minutes(glue(point), 100, 25)).toEqual([30, 30, 30]);
    expect(potLife(glue(point), 100, 25)).toMatchObject({
      basis: 'one-point',
      criterion: 'standard-cup',
      isExtrapolated: false,
    });
  });

  it('is not known without a point', () => {
    expect(potLife(glue(), 10, 20)).toEqual({ ok: false, code: 'no-pot-life' });
  });

  it.each([
    [300, 25, false],
    [301, 25, true],
    [33.4, 25, false],
    [33, 25, true],
    [100, 35, false],
    [100, 35.1, true],
    [100, 15, false],
    [100, 14.9, true],
  ])('of %d g at %d degC is extrapolated from 100 g and 25 degC: %s', (massG, temperatureC, isExtrapolated) => {
    expect(potLife(glue(point), massG, temperatureC)).toMatchObject({ isExtrapolated });
  });

  it("uses the sheet's own exponent and rate law in place of the common ones", () => {
    const own = sheet({
      potLife: [point],
      massExponent: { low: 0.1, central: 0.1, high: 0.1 },
      rateLaw: { kind: 'doubling', doublingC: { low: 10, central: 10, high: 10 } },
    });
    expect(minutes(own, 100, 35)).toEqual([15, 15, 15].map((value) => expect.closeTo(value, 9)));
    expect(minutes(own, 50, 25)[1]).toBeCloseTo(30 * 2 ** 0.1, 9);
  });

  it('never combines criteria: the one that ends first is the answer, by itself', () => {
    const gel: PotLifePoint = { ...point, criterion: 'gel', minutes: 50, massG: 150 };
    const both = glue(gel, point);
    expect(potLife(both, 100, 25)).toEqual(potLife(glue(point), 100, 25));
    expect(potLife(both, 100, 25)).toMatchObject({ criterion: 'standard-cup', basis: 'one-point' });
  });

  it('fitted to two points passes through both, with a fifth either way', () => {
    const two = glue(point, { ...point, massG: 500, minutes: 18 });
    expect(minutes(two, 500, 25)).toEqual([14.4, 18, 21.6].map((value) => expect.closeTo(value, 9)));
  });

  it('fitted beyond its points is less sure', () => {
    const two = glue(point, { ...point, massG: 500, minutes: 18 });
    const [lower, central, upper] = minutes(two, 20, 25);
    expect(lower / central).toBeCloseTo(0.6, 9);
    expect(upper / central).toBeCloseTo(1.4, 9);
  });

  it('fitted to four corners tells mass and temperature apart', () => {
    const exact = (massG: number, temperatureC: number): PotLifePoint => ({
      ...point,
      massG,
      temperatureC,
      minutes:
        30 * (massG / 100) ** -0.3 * Math.exp((60_000 / 8.314462618) * (1 / (temperatureC + 273.15) - 1 / 298.15)),
    });
    const four = glue(exact(100, 25), exact(200, 25), exact(100, 15), exact(50, 30));
    expect(potLife(four, 150, 20)).toMatchObject({ basis: 'both' });
    expect(minutes(four, 150, 20)[1]).toBeCloseTo(exact(150, 20).minutes, 6);
  });

  it('uses the nearest point where mass and temperature change together', () => {
    const diagonal = glue(point, { ...point, massG: 200, temperatureC: 15, minutes: 45 });
    expect(potLife(diagonal, 200, 15)).toMatchObject({ basis: 'nearest-point', centralMinutes: 45 });
    expect(potLife(diagonal, 100, 25)).toMatchObject({ centralMinutes: 30 });
  });

  it.each([
    ['a larger cup that lasts longer', { ...point, massG: 500, minutes: 40 }],
    ['a warmer cup that lasts longer', { ...point, temperatureC: 35, minutes: 40 }],
    ['a cup that hardly minds ten degrees', { ...point, temperatureC: 35, minutes: 29.5 }],
    ['a cup that minds ten degrees too much', { ...point, temperatureC: 35, minutes: 5 }],
  ])('refuses points that contradict each other: %s', (_, other) => {
    expect(potLife(glue(point, other), 100, 25)).toEqual({
      ok: false,
      code: 'points-contradict',
      criterion: 'standard-cup',
    });
  });

  it('keeps lower, central and upper in order, and falls with mass and warmth', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 2_000, noNaN: true }),
        fc.double({ min: 0, max: 45, noNaN: true }),
        (massG, temperatureC) => {
          const [lower, central, upper] = minutes(glue(point), massG, temperatureC);
          expect(lower).toBeLessThanOrEqual(central * (1 + 1e-12));
          expect(central).toBeLessThanOrEqual(upper * (1 + 1e-12));
          const heavier = minutes(glue(point), massG * 1.5, temperatureC);
          const warmer = minutes(glue(point), massG, temperatureC + 5);
          for (const [index, value] of [lower, central, upper].entries()) {
            expect(heavier[index]).toBeLessThanOrEqual(value * (1 + 1e-12));
            expect(warmer[index]).toBeLessThan(value);
          }
        },
      ),
    );
  });

  it('refuses a mass that is none', () => {
    expect(() => potLife(glue(point), 0, 20)).toThrow(RangeError);
    expect(() => potLife(glue(point), Number.NaN, 20)).toThrow(RangeError);
    expect(() => potLife(glue(point), 10, Number.POSITIVE_INFINITY)).toThrow(RangeError);
  });
});
