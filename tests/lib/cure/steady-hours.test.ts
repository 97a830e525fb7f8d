import { describe, expect, test } from 'vitest';
import type { AdhesiveSheet } from '@/lib/cure/adhesive-sheet';
import { steadyHours } from '@/lib/cure/steady-hours';

const sheet: AdhesiveSheet = {
  referenceC: 25,
  rateLaw: { kind: 'arrhenius', activationEnergyKjPerMol: { low: 45, central: 55, high: 65 } },
  minCureC: 13,
  potLife: [],
  milestoneHours: { handle: 24, 'recoat-from': 4, 'recoat-by': 24 },
  sources: {},
};

describe('hours at a temperature that stays the same', () => {
  test('at the reference temperature they are the sheet’s', () => {
    expect(steadyHours(sheet, 'handle', 25)).toEqual({ earliest: 24, central: 24, latest: 24 });
  });

  // 24 h * exp(Ea/R (1/288.15 - 1/298.15)) by hand for 45, 55 and 65 kJ/mol.
  test('24 h at 25 degC and 45 to 65 kJ/mol take 45.07 to 59.61 h at 15 degC, 51.83 h in the middle', () => {
    const hours = steadyHours(sheet, 'handle', 15);
    expect(hours?.earliest).toBeCloseTo(45.06, 1);
    expect(hours?.central).toBeCloseTo(51.83, 2);
    expect(hours?.latest).toBeCloseTo(59.6, 1);
  });

  test('below the least temperature nothing is sure to be ready, but it may be', () => {
    const hours = steadyHours(sheet, 'handle', 10);
    expect(hours?.central).toBeNull();
    expect(hours?.latest).toBeNull();
    expect(hours?.earliest).toBeGreaterThan(24);
  });

  test('the cold never stretches the end of a recoat window, and warmth shortens it', () => {
    expect(steadyHours(sheet, 'recoat-by', 10)).toEqual({ earliest: 24, central: 24, latest: 24 });
    expect(steadyHours(sheet, 'recoat-by', 35)?.earliest).toBeLessThan(12);
    expect(steadyHours({ ...sheet, recoatCapHours: 18 }, 'recoat-by', 20)?.latest).toBe(18);
  });

  test('what the sheet does not give is not answered', () => {
    expect(steadyHours(sheet, 'ship', 20)).toBeNull();
  });
});
