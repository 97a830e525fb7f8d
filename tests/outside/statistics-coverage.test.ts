import { describe, expect, test } from 'vitest';
import { lowerModel, lowerN } from '@/lib/pulltest/lower-model';
import { mixFinding } from '@/lib/pulltest/mix-effects';
import { outlierFlags } from '@/lib/pulltest/outlier-flags';
import { lowerPercentile } from '@/lib/statistics/lower-percentile';
import { normalQuantile } from '@/lib/statistics/normal-distribution';
import { grubbs } from '@/lib/statistics/outliers';
import { DEPTHS_MM, type Simulated, seededNormal, simulatedSeries, TOTAL_SD } from './simulated-pulls';

/*
 * How often statements are right when the truth is known: seeded simulation. In full with SOAK=1; otherwise few series
 * and wider margins (four standard errors on top of what is promised). Figures are printed.
 */
const isSoak = process.env.SOAK === '1';
const CERTAINTY = { content: 0.95, confidence: 0.75 };
const LOW = normalQuantile(0.05);

const margin = (share: number, count: number) => (isSoak ? 2.5 : 4) * Math.sqrt((share * (1 - share)) / count);

describe('lower value for a joint of a FUTURE mix: 74 to 80 % at a nominal 75', { timeout: 3_600_000 }, () => {
  const series = isSoak ? 8_000 : 100;
  const oneMissing = (mix: number, level: number) => mix === 2 && level === 3;
  const twoOfOneMix = (mix: number, level: number) => mix === 2 && level >= 3;
  const threeMissing = (mix: number, level: number) => (mix === 2 && level >= 3) || (mix === 1 && level === 0);
  const cases: readonly (readonly [name: string, options: Omit<Simulated, 'betweenShare'>])[] = [3, 6].flatMap(
    (mixes) =>
      [
        [`${mixes} mixes, complete`, { mixes }],
        [`${mixes} mixes, one cell missing`, { mixes, isMissing: oneMissing }],
        [`${mixes} mixes, two of one mix missing`, { mixes, isMissing: twoOfOneMix }],
        [`${mixes} mixes, three cells missing`, { mixes, isMissing: threeMissing }],
        // The scale tops out at the middle load of the fifth and of the fourth depth: about 11 and 29 % of the pulls.
        [`${mixes} mixes, 11 % at least`, { mixes, capN: DEPTHS_MM[4] ?? 0 }],
        [`${mixes} mixes, 29 % at least`, { mixes, capN: DEPTHS_MM[3] ?? 0 }],
        [`${mixes} mixes, 29 % at least and one missing`, { mixes, capN: DEPTHS_MM[3] ?? 0, isMissing: oneMissing }],
      ] as const,
  );

  test.each(cases)('%s', (name, options) => {
    const normal = seededNormal(20_260_201);
    for (const betweenShare of [0, 0.3, 0.6, 0.9]) {
      const below = [0, 2, 4].map(() => 0);
      let judged = 0;
      let bounds = 0;
      let pulls = 0;
      for (let i = 0; i < series; i++) {
        const made = simulatedSeries(normal, { ...options, betweenShare });
        pulls += made.readings.length;
        bounds += made.readings.filter(({ isLowerBound }) => isLowerBound).length;
        const model = lowerModel(made, CERTAINTY);
        if (!model.ok) continue;
        judged += 1;
        for (const [k, level] of [0, 2, 4].entries()) {
          const depth = DEPTHS_MM[level] ?? 0;
          // Beyond the scale's greatest load a lower value rests on the line alone; the depth stays tested.
          const lower = lowerN(model.model, depth) ?? Number.POSITIVE_INFINITY;
          if (lower <= depth * Math.exp(LOW * TOTAL_SD)) below[k] = (below[k] ?? 0) + 1;
        }
      }
      const shares = below.map((count) => count / judged);
      const overall = shares.reduce((sum, share) => sum + share, 0) / shares.length;
      const refused = series - judged;
      console.log(
        `coverage ${name}, between ${betweenShare}: ${shares.map((share) => share.toFixed(3)).join(' ')} at ` +
          `${[0, 2, 4].map((level) => DEPTHS_MM[level]).join(', ')} mm; ${((100 * bounds) / pulls).toFixed(0)} % at least; ` +
          `${refused} of ${series} refused`,
      );
      expect(overall).toBeGreaterThan(0.74 - margin(0.75, judged));
      expect(overall).toBeLessThan(0.8 + margin(0.75, judged));
      for (const share of shares) expect(share).toBeGreaterThan(0.735 - margin(0.75, judged));
      expect(refused).toBeLessThan(0.02 * series);
    }
  });
});

describe('one-sample lower values: 75 +-1 and 95 +-1 %', { timeout: 600_000 }, () => {
  const samples = isSoak ? 400_000 : 8_000;
  test.each([3, 5, 10])('n = %i', (n) => {
    const normal = seededNormal(n);
    const right = { 0.75: 0, 0.95: 0 };
    for (let i = 0; i < samples; i++) {
      const loads = Array.from({ length: n }, () => Math.exp(TOTAL_SD * normal()));
      for (const confidence of [0.75, 0.95] as const) {
        const bound = lowerPercentile(loads, { confidence, leastScatter: 0 });
        if (bound.ok && bound.load <= Math.exp(LOW * TOTAL_SD)) right[confidence] += 1;
      }
    }
    console.log(`one sample of ${n}: ${(right[0.75] / samples).toFixed(4)} and ${(right[0.95] / samples).toFixed(4)}`);
    for (const confidence of [0.75, 0.95] as const) {
      const allowed = 0.01 + (isSoak ? 0 : margin(confidence, samples));
      expect(Math.abs(right[confidence] / samples - confidence)).toBeLessThan(allowed);
    }
  });
});

describe('false alarms of tests at 5 %: within +-1 %', { timeout: 600_000 }, () => {
  const tables = isSoak ? 20_000 : 200;
  const isNear = (count: number, of: number) => {
    expect(Math.abs(count / of - 0.05)).toBeLessThan(0.01 + (isSoak ? 0 : margin(0.05, of)));
  };

  test.each([
    ['5 depths x 3 mixes', { mixes: 3 }],
    ['5 x 4', { mixes: 4 }],
    ['5 x 6', { mixes: 6 }],
    ['5 x 3, one missing', { mixes: 3, isMissing: (mix: number, level: number) => mix === 2 && level === 3 }],
    [
      '5 x 3, three missing',
      { mixes: 3, isMissing: (mix: number, level: number) => (mix === 2 && level >= 3) || (mix === 1 && level === 0) },
    ],
    ['5 x 3, 29 % at least', { mixes: 3, capN: DEPTHS_MM[3] ?? 0 }],
  ] as const)('an odd mix and an outlier, %s', (name, options) => {
    const normal = seededNormal(7);
    let oddByTest = 0;
    let oddByPermutation = 0;
    let flagged = 0;
    for (let i = 0; i < tables; i++) {
      const made = simulatedSeries(normal, { ...options, betweenShare: 0 });
      const finding = mixFinding(made, i);
      const least = Math.min(...(finding?.effects ?? []).map(({ p }) => p ?? finding?.permutation?.p ?? 1));
      if (least < 0.05) oddByTest += 1;
      if ((finding?.permutation?.p ?? 1) <= 0.05) oddByPermutation += 1;
      const outliers = outlierFlags(made);
      if (outliers.ok && outliers.flags.length > 0) flagged += 1;
    }
    console.log(
      `false alarms ${name}: odd mix ${(oddByTest / tables).toFixed(4)}, by permutation ` +
        `${(oddByPermutation / tables).toFixed(4)}, outlier ${(flagged / tables).toFixed(4)}`,
    );
    isNear(oddByTest, tables);
    isNear(oddByPermutation, tables);
    isNear(flagged, tables);
  });

  test.each([3, 5, 10, 15])("Grubbs's test of %i readings", (n) => {
    const normal = seededNormal(100 + n);
    const samples = 4 * tables;
    let flagged = 0;
    for (let i = 0; i < samples; i++) {
      const result = grubbs(Array.from({ length: n }, normal));
      if (result.ok && result.isFlagged) flagged += 1;
    }
    console.log(`false alarms Grubbs n = ${n}: ${(flagged / samples).toFixed(4)}`);
    isNear(flagged, samples);
  });
});
