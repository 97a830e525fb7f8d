import { describe, expect, test } from 'vitest';
import { conclusion } from '@/lib/pulltest/conclusion';
import { conditionComparisons } from '@/lib/pulltest/condition-comparison';
import { leastEmbedment } from '@/lib/pulltest/least-embedment';
import { type LowerModel, lowerCurve, lowerModel, lowerN } from '@/lib/pulltest/lower-model';
import { nextTests } from '@/lib/pulltest/next-test';
import { pullAnalyses } from '@/lib/pulltest/pull-analysis';
import type { PullRecord } from '@/lib/pulltest/pull-record';
import type { SeriesGoal } from '@/lib/pulltest/series-analysis';
import { SERIES_REFUSALS, seriesRefusalText } from '@/lib/pulltest/series-refusal';
import { inches, poundsForce } from '@/lib/units/force-and-length';
import { wordsText } from '@/lib/units/quantity';
import { pullsOf, seriesOf } from './make-series';

/** Synthetic series of the reference: five depths in three mixes, lbf; the third mix reads low. */
const DEPTHS_IN = [0.25, 0.375, 0.5, 0.625, 0.75];
const LOADS_LBF = [
  [62, 95, 121, 158, 181],
  [58, 88, 130, 149, 189],
  [47, 79, 104, 122, 151],
];
const records = (loads: readonly (readonly (number | null)[])[] = LOADS_LBF) =>
  pullsOf(
    loads.map((row) => row.map((load) => (load === null ? null : poundsForce(load)))),
    DEPTHS_IN.map(inches),
  );
const GOAL: SeriesGoal = {
  demandN: poundsForce(60),
  depthMm: null,
  stepMm: inches(1 / 16),
  certainty: { content: 0.95, confidence: 0.75 },
  seed: 1,
};
const NAMES = {
  mix: (id: string) => `mix ${id} of batch 12`,
  pull: (id: string) => id,
  pieces: (id: string) => (id === 'C' ? 'pieces 9-16 of batch 12' : null),
};
const INCH_LBF = { lengthUnit: 'inch', forceUnit: 'lbf', massUnit: 'g', temperatureUnit: 'F' } as const;

function analysisOf(pulls: readonly PullRecord[], goal: SeriesGoal = GOAL) {
  const [analysis] = pullAnalyses(pulls, 'anchorage', goal);
  if (analysis === undefined) throw new Error('nothing analysed');
  return analysis;
}

function told(pulls: readonly PullRecord[], goal: SeriesGoal = GOAL): string[] {
  const analysis = analysisOf(pulls, goal);
  return [...conclusion(analysis, goal, NAMES), ...nextTests(analysis, goal, NAMES)].map(({ words }) =>
    wordsText(words, INCH_LBF),
  );
}

describe('the conclusion in plain words', () => {
  test('answers the demand, names the limits, the low mix and its pieces, and what to test next', () => {
    const text = told(records());
    expect(text[0]).toBe(
      '7/16" deep is enough for 60.0 lbf. With 75 % confidence at least 95 % of joints made like these, glued with a mix yet to be mixed, hold 68.9 lbf or more there.',
    );
    expect(text[1]).toContain('15 pulls of 3 mixes that scatter by 13 %');
    expect(text[2]).toContain('Mix C of batch 12 reads 18 % low against the others (p < .001).');
    expect(text[2]).toContain('Pieces 9-16 of batch 12 are joined with it.');
    expect(text).toContain(
      'The worst of 3 lies above what one joint in twenty falls below 86 % of the time: it is no lower value.',
    );
    expect(text.join(' ')).toContain('5 mixes would raise the lower value more');
  });

  test('an outlier is a question, stays in, and its weight is shown', () => {
    const text = told(
      records(LOADS_LBF.map((row, mix) => row.map((load, i) => (mix === 1 && i === 2 ? 60 : load)))),
    ).join(' ');
    expect(text).toContain(
      'B-3 reads 50 % low for its depth and mix. Among 15 pulls that happens by accident in one series of twenty. It stays in',
    );
    expect(text).toContain('Without B-3 the lower value would be');
  });

  test('an excluded pull is shown with its weight; a cause that can recur is a finding', () => {
    const pulls = records().map(
      (pull): PullRecord =>
        pull.id === 'C-5' ? { ...pull, exclusion: { reason: 'mix-off-ratio', note: '', personId: null, at: 0 } } : pull,
    );
    const analysis = analysisOf(pulls);
    expect(analysis.tally.out).toEqual([{ reason: 'excluded', pulls: 1 }]);
    expect(analysis.withExcluded?.atDepth).not.toBeNull();
    const text = told(pulls).join(' ');
    expect(text).toContain('Not counted: 1 pull, left out for a physical reason.');
    expect(text).toContain('With the pulls that were left out the lower value at 1/2" would be 79.0 lbf');
    expect(text).toContain('The mix was off its ratio: if that can happen to a lure too');
  });

  test('two mixes: no lower value, and nobody is blamed', () => {
    const text = told(records(LOADS_LBF.slice(1)));
    expect(text[0]).toContain('cannot be told from fewer than three mixes');
    expect(text.join(' ')).toContain('From two nobody can tell which is the odd one.');
    expect(text.join(' ')).not.toMatch(/hold [\d.]+ lbf or more/);
  });

  test('a joint that fell out forbids every claim', () => {
    const text = told(records(LOADS_LBF.map((row, mix) => row.map((load, i) => (mix === 0 && i === 0 ? 0 : load)))));
    expect(text[0]).toContain('A joint came out by hand.');
    expect(text.join(' ')).not.toMatch(/enough for/);
  });

  test('not reached and already enough are said as such, never drawn on', () => {
    expect(told(records(), { ...GOAL, demandN: poundsForce(200) })[0]).toBe(
      '200.0 lbf is not reached within the depths tested: at 3/4" the lower value is 119.8 lbf. Nothing is said beyond that depth.',
    );
    expect(told(records(), { ...GOAL, demandN: poundsForce(30) })[0]).toContain(
      'The shallowest depth tested, 1/4", is enough for 30.0 lbf; shallower was not tested.',
    );
    expect(told(records(), { ...GOAL, demandN: null })[0]).toContain('hold 79.0 lbf or more at 1/2".');
  });

  test('wire that broke first counts as at least, and a stronger one is advised', () => {
    const pulls = records().map(
      (pull): PullRecord => ((pull.loadN ?? 0) > poundsForce(150) ? { ...pull, mode: 'wire-broke' } : pull),
    );
    const text = told(pulls).join(' ');
    expect(text).toContain('4 pulls stopped before the joint failed and count as "at least".');
    expect(text).toContain('Use a stronger wire in the specimens: this one broke from 151.0 lbf on');
  });

  test('depths without one line stand for themselves', () => {
    const bent = [
      [55, 108, 149, 171, 176],
      [51, 101, 140, 166, 179],
      [58, 112, 151, 168, 174],
    ];
    const pulls = pullsOf(
      bent.map((row) => row.map(poundsForce)),
      [0.25, 0.5, 0.75, 1, 1.25].map(inches),
    );
    const analysis = analysisOf(pulls);
    expect(analysis.answer.lower).toMatchObject({ ok: true, model: { kind: 'levels', because: 'line-does-not-fit' } });
    expect(analysis.answer.least).toMatchObject({ kind: 'depth', exactMm: null, embedmentMm: inches(0.5) });
    expect(told(pulls).join(' ')).toContain('Strength does not follow one line over depth (p < .001)');
  });

  test('every refusal has its words', () => {
    expect(new Set(SERIES_REFUSALS.map(seriesRefusalText)).size).toBe(SERIES_REFUSALS.length);
  });
});

describe('least embedment', () => {
  const model = (loads = LOADS_LBF): LowerModel => {
    const result = lowerModel(seriesOf(loads, DEPTHS_IN), GOAL.certainty);
    if (!result.ok) throw new Error(result.code);
    return result.model;
  };

  test('a demand equal to a lower value counts as reached, a hair more does not', () => {
    const at = lowerN(model(), 0.5) ?? 0;
    const exact = leastEmbedment(model(), at * (1 - 1e-9), 1 / 16);
    expect(exact).toMatchObject({ kind: 'depth' });
    if (exact.kind === 'depth') expect(exact.embedmentMm).toBeCloseTo(0.5, 9);
    const more = leastEmbedment(model(), at * 1.001, 1 / 16);
    if (more.kind === 'depth') expect(more.embedmentMm).toBeCloseTo(0.5625, 9);
  });

  test('rounding up never leaves the tested depths', () => {
    const nearTop = (lowerN(model(), 0.75) ?? 0) * 0.999;
    expect(leastEmbedment(model(), nearTop, 0.4)).toMatchObject({ kind: 'depth', embedmentMm: 0.75 });
  });

  test('outside the tested depths nothing is said', () => {
    expect(lowerN(model(), 0.2)).toBeNull();
    expect(lowerN(model(), 0.8)).toBeNull();
    expect(() => leastEmbedment(model(), 0, 1)).toThrow(RangeError);
  });

  test('the curve rises, lies below the middle, and the middle within its band', () => {
    const curve = lowerCurve(model());
    expect(curve[0]?.depthMm).toBe(0.25);
    expect(curve.at(-1)?.depthMm).toBe(0.75);
    for (const [i, point] of curve.entries()) {
      expect(point.lowerN).toBeLessThan(point.fittedN);
      expect(point.lowerN).toBeGreaterThan(curve[i - 1]?.lowerN ?? 0);
      expect(point.middleBand?.lowN).toBeLessThan(point.fittedN);
      expect(point.middleBand?.highN).toBeGreaterThan(point.fittedN);
    }
  });
});

test('which refusal comes first', () => {
  const code = (
    loads: readonly (readonly (number | null)[])[],
    change: (pull: PullRecord) => PullRecord = (pull) => pull,
  ) => {
    const { lower } = analysisOf(records(loads).map(change)).answer;
    return lower.ok ? lower.model.kind : lower.code;
  };
  expect(code([[62, 95, 121, 158, 181]])).toBe('fewer-than-3-mixes');
  expect(code(LOADS_LBF, (pull) => ({ ...pull, isLowerBound: true }))).toBe('too-few-exact');
  expect(code(LOADS_LBF, (pull) => ({ ...pull, isLowerBound: pull.embedmentMm > inches(0.3) }))).toBe(
    'too-many-bounds',
  );
  expect(code(LOADS_LBF, (pull) => ({ ...pull, isLowerBound: pull.mixId === 'C' }))).toBe('mix-of-bounds-only');
  expect(code(LOADS_LBF.map((row) => [...row].reverse()))).toBe('slope-not-positive');
  // The third mix has a single pull left: how mixes differ would rest on two.
  expect(code([...LOADS_LBF.slice(0, 2), [47, null, null, null, null]])).toBe('fewer-than-3-mixes');
  expect(code(LOADS_LBF, (pull) => ({ ...pull, loadN: null }))).toBe('no-readings');
  expect(code(LOADS_LBF.map(([first = 0]) => [first]))).toBe('levels');
});

describe('two conditions compared', () => {
  const both = (shared: boolean) => [
    ...records(),
    ...records(LOADS_LBF.map((row) => row.map((load, i) => 0.7 * load * (1 + 0.02 * (i - 2))))).map((pull) => ({
      ...pull,
      id: `cedar ${pull.id}`,
      specimenId: `cedar ${pull.id}`,
      condition: 'cedar',
      mixId: shared ? pull.mixId : `cedar ${pull.mixId}`,
    })),
  ];

  test('in the same mixes the difference is within mixes, and sharp', () => {
    const [result] = conditionComparisons(both(true), 'anchorage');
    if (result === undefined || !result.ok) throw new Error('no comparison');
    expect(result).toMatchObject({ condition: 'cedar', against: '', basis: 'within' });
    expect(result.ratio).toBeCloseTo(0.7, 2);
    expect(result.from).toBeGreaterThan(0.66);
    expect(result.to).toBeLessThan(0.74);
    expect(result.p).toBeLessThan(1e-6);
  });

  test('with mixes of their own the mixes are what is compared, and the interval is wide', () => {
    const [result] = conditionComparisons(both(false), 'anchorage');
    if (result === undefined || !result.ok) throw new Error('no comparison');
    expect(result.basis).toBe('between');
    expect(result.ratio).toBeCloseTo(0.7, 2);
    expect(result.to - result.from).toBeGreaterThan(0.2);
  });

  test('no common depth, bounds, or one condition alone', () => {
    expect(conditionComparisons(records(), 'anchorage')).toEqual([]);
    const apart = both(true).map((pull) =>
      pull.condition === 'cedar' ? { ...pull, embedmentMm: pull.embedmentMm + 40 } : pull,
    );
    expect(conditionComparisons(apart, 'anchorage')).toMatchObject([{ ok: false, code: 'no-common-depth' }]);
    const bounds = both(true).map((pull) => ({ ...pull, isLowerBound: true }));
    expect(conditionComparisons(bounds, 'anchorage')).toMatchObject([{ ok: false, code: 'has-bounds' }]);
  });
});
