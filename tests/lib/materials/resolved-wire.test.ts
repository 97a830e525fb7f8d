import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { resolveWire } from '@/lib/materials/resolved-wire';
import { springWireRow, springWireTensile } from '@/lib/materials/spring-wire-tensile';
import type { WireSheet } from '@/lib/materials/wire-sheet';
import { inches, MPA_PER_PSI } from '@/lib/units/force-and-length';

const spring: WireSheet = { alloy: 'stainless-302-304', temper: 'spring', diameterMm: inches(0.041), sources: {} };

function resolved(sheet: WireSheet, diameterMm = sheet.diameterMm) {
  const result = resolveWire(sheet, diameterMm);
  if (!result.ok) throw new Error(result.code);
  return result.wire;
}

test('.041 spring wire: 275 to 304 ksi, yield three quarters of the least', () => {
  const wire = resolved(spring);
  expect(wire.leastTensileMpa / MPA_PER_PSI).toBeCloseTo(275_000, 3);
  expect(wire.tensileMpa / MPA_PER_PSI).toBeCloseTo(289_500, 3);
  expect(wire.yieldMpa / MPA_PER_PSI).toBeCloseTo(206_250, 3);
  expect(wire.tensileSource.kind).toBe('published');
});

test('soft wire of the same diameter is a third to a quarter of it', () => {
  const wire = resolved({ ...spring, temper: 'soft' });
  expect(wire.leastTensileMpa / MPA_PER_PSI).toBeCloseTo(75_000, 3);
  expect(wire.yieldMpa / MPA_PER_PSI).toBeCloseTo(35_000, 3);
  expect(wire.tensileSource.kind).toBe('from-memory');
});

test("the maker's own statement wins, and without a source it is the shop's own", () => {
  const wire = resolved({ ...spring, tensileMpa: 1500 });
  expect(wire).toMatchObject({ tensileMpa: 1500, leastTensileMpa: 1500, tensileSource: { kind: 'own' } });
  expect(resolved({ ...spring, alloy: 'brass', temper: 'half-hard', tensileMpa: 400 }).yieldMpa).toBe(200);
});

test('316 spring wire is taken 11 % under', () => {
  expect(resolved({ ...spring, alloy: 'stainless-316' }).leastTensileMpa / MPA_PER_PSI).toBeCloseTo(244_750, 3);
});

describe('refusals', () => {
  test.each([
    ['no temper', { ...spring, temper: null }, 1, 'temper-missing'],
    ['brass without a statement', { ...spring, alloy: 'brass' as const }, 1, 'strength-not-known'],
    ['half-hard without a statement', { ...spring, temper: 'half-hard' as const }, 1, 'strength-not-known'],
    ['thinner than the standard', spring, inches(0.017), 'diameter-outside'],
    ['thicker than the rows', spring, inches(0.09), 'diameter-outside'],
    ['a diameter that is not a number', spring, Number.NaN, 'unusable-figure'],
    ['a strength of nothing', { ...spring, tensileMpa: 0 }, 1, 'unusable-figure'],
  ])('%s', (_, sheet, diameterMm, code) => {
    expect(resolveWire(sheet, diameterMm)).toEqual({ ok: false, code });
  });
});

test('at a printed diameter the row itself holds, and a thicker wire never carries less', () => {
  expect(springWireTensile(inches(0.041))).toEqual(springWireRow(inches(0.041)));
  fc.assert(
    fc.property(
      fc.double({ min: 0.0185, max: 0.079, noNaN: true }),
      fc.double({ min: 0, max: 0.001, noNaN: true }),
      (d, more) => {
        const load = (inch: number) => inch * inch * (springWireTensile(inches(inch))?.leastMpa ?? Number.NaN);
        expect(load(d + more)).toBeGreaterThanOrEqual(load(d) * (1 - 1e-12));
      },
    ),
    { numRuns: 2000, seed: 3 },
  );
});
