import { describe, expect, it } from 'vitest';
import { doublingOfActivationEnergy, fitActivationEnergy } from '@/lib/cure/activation-energy';
import type { AdhesiveSheet, PotLifePoint } from '@/lib/cure/adhesive-sheet';
import { dewPointC, dewPointCheck } from '@/lib/cure/dew-point';
import { exotherm, massWarnings } from '@/lib/cure/exotherm';
import { conditionWarnings } from '@/lib/cure/plain-hours-limits';

describe("activation energy from a sheet's two temperatures", () => {
  it('does not mind the order of the two', () => {
    const cool = { temperatureC: 20, minutes: 45 };
    const warm = { temperatureC: 30, minutes: 22 };
    expect(fitActivationEnergy(warm, cool)).toEqual(fitActivationEnergy(cool, warm));
    expect(fitActivationEnergy(cool, warm)).toMatchObject({
      ok: true,
      isUnusual: false,
      box: { low: expect.closeTo(47.88, 2), high: expect.closeTo(57.88, 2) },
    });
  });

  it.each([
    [20, 45, 20, 22, 'same-temperature'],
    [20, 45, 30, 45, 'not-faster-when-warmer'],
    [20, 45, 30, 60, 'not-faster-when-warmer'],
    [20, 0, 30, 60, 'not-positive'],
    [20, Number.NaN, 30, 60, 'not-positive'],
    [20, 45, 30, 43, 'impossible'],
    [20, 45, 30, 5, 'impossible'],
  ])('%d degC %d min and %d degC %d min are refused: %s', (t1, m1, t2, m2, code) => {
    const fit = fitActivationEnergy({ temperatureC: t1, minutes: m1 }, { temperatureC: t2, minutes: m2 });
    expect(fit).toMatchObject({ ok: false, code });
  });

  it('is doubtful outside 35 to 80 kJ/mol', () => {
    expect(fitActivationEnergy({ temperatureC: 20, minutes: 45 }, { temperatureC: 30, minutes: 30 })).toMatchObject({
      isUnusual: true,
    });
    expect(fitActivationEnergy({ temperatureC: 20, minutes: 45 }, { temperatureC: 30, minutes: 14 })).toMatchObject({
      isUnusual: true,
    });
  });

  it('so low that a rate never doubles is refused', () => {
    expect(() => doublingOfActivationEnergy(1.6, 20)).toThrow(RangeError);
  });
});

describe('dew point', () => {
  it("is the air's own temperature at 100 %, and lower with drier or colder air", () => {
    expect(dewPointC(20, 100)).toBe(20);
    expect(dewPointC(20, 50)).toBeLessThan(dewPointC(20, 60));
    expect(dewPointC(15, 60)).toBeLessThan(dewPointC(20, 60));
    expect(dewPointC(60, 1)).toBeGreaterThan(-30);
  });

  it('is not judged without all three, or with a humidity that cannot be', () => {
    expect(dewPointCheck({})).toEqual({ kind: 'not-judged', missing: ['airC', 'humidityPct', 'surfaceC'] });
    expect(dewPointCheck({ airC: 20, humidityPct: 0, surfaceC: 20 })).toEqual({
      kind: 'not-judged',
      missing: ['humidityPct'],
    });
    expect(dewPointCheck({ airC: 20, humidityPct: 101, surfaceC: 20 })).toEqual({
      kind: 'not-judged',
      missing: ['humidityPct'],
    });
    expect(dewPointCheck({ airC: 70, humidityPct: 50, surfaceC: Number.NaN })).toEqual({
      kind: 'not-judged',
      missing: ['airC', 'surfaceC'],
    });
  });

  it('wants the surface 3 degC above, and exactly 3 will do', () => {
    const dewC = dewPointC(20, 80);
    expect(dewPointCheck({ airC: 20, humidityPct: 80, surfaceC: Math.ceil((dewC + 3) * 1e6) / 1e6 }).kind).toBe('ok');
    expect(dewPointCheck({ airC: 20, humidityPct: 80, surfaceC: 18 })).toMatchObject({
      kind: 'too-close',
      dewPointC: expect.closeTo(16.4, 1),
      marginC: expect.closeTo(1.6, 1),
    });
  });

  it('refuses what the formula does not hold for', () => {
    expect(() => dewPointC(-46, 50)).toThrow(RangeError);
    expect(() => dewPointC(20, 0)).toThrow(RangeError);
    expect(() => dewPointC(20, Number.NaN)).toThrow(RangeError);
  });
});

describe('limits of plain hours', () => {
  it('warn below 10 degC and outside 30 to 80 % humidity, borders included in the good', () => {
    expect(conditionWarnings({ temperatureC: 10, humidityPct: 30 })).toEqual([]);
    expect(conditionWarnings({ temperatureC: 10, humidityPct: 80 })).toEqual([]);
    expect(conditionWarnings({})).toEqual([]);
    expect(conditionWarnings({ temperatureC: 9.9, humidityPct: 81 })).toEqual([
      { code: 'too-cold', temperatureC: 9.9, limitC: 10 },
      { code: 'too-damp', humidityPct: 81, limitPct: 80 },
    ]);
    expect(conditionWarnings({ humidityPct: 29 })).toEqual([{ code: 'too-dry', humidityPct: 29, limitPct: 30 }]);
  });
});

describe('heat of a cup', () => {
  const point: PotLifePoint = { minutes: 30, massG: 100, temperatureC: 25, criterion: 'viscosity-doubled' };
  const glue = (...potLife: PotLifePoint[]): Pick<AdhesiveSheet, 'potLife'> => ({ potLife });

  it('is not known without a pot life', () => {
    expect(exotherm(glue(), { massG: 10, roomC: 20, startC: 20 })).toEqual({ ok: false, code: 'no-pot-life' });
  });

  it.each([
    ['viscosity-doubled', 'endOfUseMinutes'],
    ['standard-cup', 'endOfUseMinutes'],
    ['unknown', 'endOfUseMinutes'],
    ['gel', 'gelMinutes'],
  ] as const)("reproduces the sheet's own point by %s", (criterion, field) => {
    const result = exotherm(glue({ ...point, criterion }), { massG: 100, roomC: 25, startC: 25 });
    if (!result.ok) throw new Error(result.code);
    expect(result[field]).toBeCloseTo(30, 3);
  });

  it('is slower where the test ends at 40 or 50 degC, or in a film', () => {
    const gelOf = (criterion: PotLifePoint['criterion']) => {
      const result = exotherm(glue({ ...point, criterion }), { massG: 100, roomC: 25, startC: 25 });
      return result.ok ? (result.gelMinutes ?? Number.NaN) : Number.NaN;
    };
    expect(gelOf('cup-reaches-50C')).toBeGreaterThan(30);
    expect(gelOf('cup-reaches-40C-less-margin')).toBeGreaterThan(gelOf('cup-reaches-50C'));
    expect(gelOf('thin-film-workable')).toBeLessThan(30);
  });

  it('is not matched where a cup would never get so warm', () => {
    const cold = glue({ ...point, criterion: 'cup-reaches-50C', minutes: 10_000, massG: 1, temperatureC: 5 });
    expect(exotherm(cold, { massG: 10, roomC: 20, startC: 20 })).toEqual({ ok: false, code: 'not-matched' });
  });

  it('grows with mass and with warm parts', () => {
    const peak = (massG: number, startC: number) => {
      const result = exotherm(glue(point), { massG, roomC: 20, startC });
      return result.ok ? result.peakC : Number.NaN;
    };
    expect(peak(5, 20)).toBeLessThan(peak(50, 20));
    expect(peak(50, 20)).toBeLessThan(peak(50, 30));
  });

  it('stays cool in a small mix of a slow resin in a cold room', () => {
    const slow = glue({ ...point, minutes: 600 });
    expect(exotherm(slow, { massG: 2, roomC: 12, startC: 12 })).toMatchObject({ ok: true, level: 'cool' });
    expect(exotherm(glue(point), { massG: 100, roomC: 25, startC: 25 })).toMatchObject({ ok: true, level: 'smoking' });
  });

  it("is warned of by mass alone: above the sheet's maximum, its tested cup, and what is large for its speed", () => {
    const codes = (potLife: PotLifePoint[], massG: number, maxMassG?: number) =>
      massWarnings({ potLife, ...(maxMassG === undefined ? {} : { maxMassG }) }, massG).map(({ code }) => code);
    expect(codes([point], 100, 100)).toEqual([]);
    expect(codes([point], 101, 100)).toEqual(['above-sheet-maximum', 'above-tested-mass']);
    expect(codes([point], 201)).toEqual(['above-tested-mass', 'large-for-its-speed']);
    expect(codes([{ ...point, minutes: 5, massG: 60 }], 55)).toEqual(['large-for-its-speed']);
    expect(codes([], 500, 100)).toEqual(['above-sheet-maximum']);
  });

  it('refuses a mass that is none', () => {
    expect(() => exotherm(glue(point), { massG: 0, roomC: 20, startC: 20 })).toThrow(RangeError);
  });
});
