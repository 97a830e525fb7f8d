import { describe, expect, test } from 'vitest';
import { normalProbability, normalQuantile } from '@/lib/statistics/normal-distribution';
import { seededRandom } from '@/lib/statistics/seeded-random';
import { type KappaReading, kappaPosterior, type NormalPrior } from '@/lib/strength/kappa-posterior';
import { kappaPrior } from '@/lib/strength/kappa-prior';
import { kappaReading, type PullFailure, type PullReading } from '@/lib/strength/pull-reading';
import { updatedBelief } from '@/lib/strength/updated-belief';
import { inches, poundsForce } from '@/lib/units/force-and-length';
import { SETTINGS, wood } from './designs';
import { turns } from './soak';

const PRIOR: NormalPrior = { mean: Math.log(1.3), sd: 0.3, jointSd: 0.18 };
const exact = (kappa: number): KappaReading => ({ logKappa: Math.log(kappa), isLowerBound: false });
const bound = (kappa: number): KappaReading => ({ logKappa: Math.log(kappa), isLowerBound: true });

/** The posterior by Simpson's rule over prior times likelihood, written out anew; steps of 1/5,000. */
function byQuadrature(prior: NormalPrior, readings: readonly KappaReading[]) {
  const density = (mu: number) =>
    readings.reduce(
      (product, { logKappa, isLowerBound }) => {
        const z = (logKappa - mu) / prior.jointSd;
        return product * (isLowerBound ? normalProbability(-z) : Math.exp(-0.5 * z * z));
      },
      Math.exp(-0.5 * ((mu - prior.mean) / prior.sd) ** 2),
    );
  const steps = 35_000;
  const grid = Array.from({ length: steps + 1 }, (_, i) => -3 + (7 * i) / steps);
  const weights = grid.map((mu, i) => density(mu) * (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2));
  const sum = (f: (mu: number) => number) => grid.reduce((total, mu, i) => total + f(mu) * (weights[i] ?? 0), 0);
  const total = sum(() => 1);
  const mean = sum((mu) => mu) / total;
  return {
    mean,
    sd: Math.sqrt(sum((mu) => (mu - mean) ** 2) / total),
    below: (q: number) => sum((mu) => normalProbability((q - mu) / prior.jointSd)) / total,
  };
}

describe('what is believed after pulls', () => {
  test('without lower bounds it is the closed form', () => {
    const readings = [exact(1.1), exact(1.4), exact(1.25)];
    const v = 1 / (1 / 0.3 ** 2 + 3 / 0.18 ** 2);
    const y = readings.reduce((sum, reading) => sum + reading.logKappa, 0);
    const mean = v * (Math.log(1.3) / 0.3 ** 2 + y / 0.18 ** 2);
    const posterior = kappaPosterior(PRIOR, readings);
    expect(posterior.mean).toBeCloseTo(mean, 12);
    expect(posterior.sd).toBeCloseTo(Math.sqrt(v), 12);
    expect(posterior.predictiveQuantile(0.05)).toBeCloseTo(mean + normalQuantile(0.05) * Math.sqrt(v + 0.18 ** 2), 10);
  });

  const cases: readonly (readonly [string, readonly KappaReading[]])[] = [
    ['only lower bounds', [bound(1.2), bound(1.5), bound(0.9)]],
    ['one strong lower bound', [bound(2.4)]],
    ['a mixture', [exact(1.1), bound(1.35), exact(1.3), bound(1.2), exact(0.95)]],
    [
      'many',
      [...Array.from({ length: 12 }, (_, i) => exact(1 + i / 30)), ...Array.from({ length: 9 }, () => bound(1.4))],
    ],
  ];
  test.each(cases)('with lower bounds it agrees with quadrature to 1e-6: %s', (_, readings) => {
    const posterior = kappaPosterior(PRIOR, readings);
    const quadrature = byQuadrature(PRIOR, readings);
    expect(Math.abs(posterior.mean - quadrature.mean)).toBeLessThan(1e-6);
    expect(Math.abs(posterior.sd - quadrature.sd)).toBeLessThan(1e-6);
    for (const share of [0.01, 0.05, 0.5, 0.95]) {
      expect(Math.abs(quadrature.below(posterior.predictiveQuantile(share)) - share)).toBeLessThan(1e-6);
    }
  });

  test('a lower bound that says nothing new changes nothing', () => {
    const readings = [exact(1.3), exact(1.2)];
    const without = kappaPosterior(PRIOR, readings);
    const withBound = kappaPosterior(PRIOR, [...readings, bound(0.05)]);
    expect(withBound.mean).toBeCloseTo(without.mean, 8);
    expect(withBound.predictiveQuantile(0.05)).toBeCloseTo(without.predictiveQuantile(0.05), 7);
  });

  test('a lower bound raises the belief, less than the same load as a failure above it would', () => {
    const none = kappaPosterior(PRIOR, []).mean;
    const atLeast = kappaPosterior(PRIOR, [bound(1.5)]).mean;
    expect(atLeast).toBeGreaterThan(none);
    expect(kappaPosterior(PRIOR, [exact(1.5)]).mean).toBeLessThan(atLeast + 0.2);
  });
});

describe('belief by adhesive', () => {
  const belief = (bondClass: 'slow-epoxy' | 'polyurethane', readings: readonly KappaReading[]) =>
    updatedBelief(kappaPrior(bondClass), readings, SETTINGS.lower);

  test('slow epoxy: median 1.30, lower twentieth 0.731 before any pull', () => {
    const prior = belief('slow-epoxy', []);
    expect(prior?.median).toBeCloseTo(1.3, 12);
    expect(prior?.lower).toBeCloseTo(0.731, 3);
  });

  test('any other adhesive says nothing before three pulls failed in its bond', () => {
    expect(belief('polyurethane', [])).toBeNull();
    expect(belief('polyurethane', [exact(1), exact(1.1), bound(2)])).toBeNull();
    expect(belief('polyurethane', [exact(1), exact(1.1), exact(0.9)])).toMatchObject({ exactPulls: 3, boundPulls: 0 });
  });

  test("from eight pulls on the readings' own scatter counts, at least 0.05", () => {
    const same = belief(
      'slow-epoxy',
      Array.from({ length: 8 }, () => exact(1.2)),
    );
    const wide = belief('slow-epoxy', [0.6, 0.8, 1, 1.2, 1.4, 1.6, 1.8, 2].map(exact));
    const seven = belief(
      'slow-epoxy',
      Array.from({ length: 7 }, () => exact(1.2)),
    );
    expect(same?.lower ?? 0).toBeGreaterThan(seven?.lower ?? 9);
    expect(wide?.logSd ?? 0).toBeGreaterThan(0.38);
    expect(same?.logSd ?? 9).toBeLessThan(0.06);
  });

  test('the source names the pulls', () => {
    expect(belief('slow-epoxy', [exact(1.2), bound(1.3)])?.source).toMatchObject({ kind: 'own' });
    expect(belief('slow-epoxy', [exact(1.2), bound(1.3)])?.source.text).toContain('1 that failed in the bond, 1 more');
  });
});

describe('a pull as a reading of kappa', () => {
  const specimen = {
    wood: wood('yellow-poplar'),
    wireDiameterMm: inches(0.041),
    bitDiameterMm: inches(5 / 64),
    embedmentMm: inches(0.25),
    voidMm: 0,
    cover: null,
    temperatureC: 21,
  };
  const pull = (failure: PullFailure, more: Partial<PullReading> = {}): PullReading => ({
    loadN: poundsForce(99),
    failure,
    isLowerBound: false,
    excludedReason: null,
    specimen,
    ...more,
  });
  const read = (one: PullReading) => kappaReading(one, SETTINGS.saturationMm);

  test('the practice value is a kappa of 1.319', () => {
    expect(Math.exp(read(pull('wood-sleeve'))?.logKappa ?? 0)).toBeCloseTo(1.319, 3);
  });

  test.each([
    ['slid-out', false],
    ['wood-sleeve', false],
    ['split', true],
    ['tore-out', true],
    ['wire-broke', true],
    ['eye-opened', true],
    ['jig-failed', true],
  ] as const)('%s is at least: %s', (failure, isLowerBound) => {
    expect(read(pull(failure))?.isLowerBound).toBe(isLowerBound);
  });

  test('a stopped pull is at least; an excluded one and a load of nothing say nothing', () => {
    expect(read(pull('slid-out', { isLowerBound: true }))?.isLowerBound).toBe(true);
    expect(read(pull('slid-out', { excludedReason: 'fixture slipped' }))).toBeNull();
    expect(read(pull('slid-out', { loadN: 0 }))).toBeNull();
    expect(read(pull('slid-out', { specimen: { ...specimen, temperatureC: 70 } }))).toBeNull();
  });
});

test('the lower value covers the next joint in 95 of 100, plus or minus 1', () => {
  const random = seededRandom(97);
  const gauss = () => normalQuantile(Math.min(1 - 1e-12, Math.max(1e-12, random())));
  const trials = turns(40_000, 8000);
  for (const [count, ceiling] of [
    [0, null],
    [3, null],
    [5, 1.35],
    [10, null],
    [10, 1.5],
  ] as const) {
    let above = 0;
    for (let i = 0; i < trials; i++) {
      const prior = kappaPrior('slow-epoxy');
      const mean = Math.log(prior.median) + prior.groupLogSd * gauss();
      const joint = () => mean + prior.jointLogSd * gauss();
      const readings = Array.from({ length: count }, () => {
        const logKappa = joint();
        const cap = ceiling === null ? Number.POSITIVE_INFINITY : Math.log(ceiling);
        return { logKappa: Math.min(logKappa, cap), isLowerBound: logKappa > cap };
      });
      const belief = updatedBelief(prior, readings, SETTINGS.lower);
      if (belief !== null && joint() >= Math.log(belief.lower)) above++;
    }
    const share = above / trials;
    console.log(
      `${count} pulls${ceiling === null ? '' : `, stopped at kappa ${ceiling}`}: ${(100 * share).toFixed(2)} % of next joints above the lower value (${trials} series)`,
    );
    expect(Math.abs(share - 0.95)).toBeLessThan(0.01);
  }
});
