import { describe, expect, test } from 'vitest';
import { canRecur, EXCLUSION_REASONS, exclusionText } from '@/lib/pulltest/exclusion';
import { judgePulls, OUT_REASONS, PULL_MARKS, type PullUse } from '@/lib/pulltest/judge-pulls';
import { modeMeaning, modeText, PULL_MODES } from '@/lib/pulltest/pull-mode';
import type { PullRecord } from '@/lib/pulltest/pull-record';
import { pullTiming } from '@/lib/pulltest/pull-release';
import { pullTally } from '@/lib/pulltest/pull-tally';
import { markText, outReasonText } from '@/lib/pulltest/pull-words';
import { readingsWithout, seriesReadings } from '@/lib/pulltest/series-readings';
import { HOUR_MS } from '@/lib/units/instant';
import { PLAIN_PULL, pullsOf } from './make-series';

const use = (change: Partial<PullRecord>, withExcluded = false): PullUse | undefined =>
  judgePulls([{ ...PLAIN_PULL, ...change }], { question: 'anchorage', withExcluded })[0]?.use;

describe('what a pull says', () => {
  test('the joint failed: the load itself; something else failed: at least the load', () => {
    expect(use({})).toEqual({ kind: 'exact', loadN: 400 });
    for (const mode of ['wire-broke', 'eye-opened', 'jig-failed', 'held'] as const) {
      expect(use({ mode })).toEqual({ kind: 'at-least', loadN: 400 });
    }
    expect(use({ mode: 'scale-failed' })).toEqual({ kind: 'out', reason: 'scale-failed' });
  });

  test('a split is the answer to what holds, and a bound to what the glue holds', () => {
    expect(modeMeaning('split', 'anchorage')).toBe('exact');
    expect(modeMeaning('split', 'bond')).toBe('at-least');
    expect(modeMeaning('wood-sleeve', 'bond')).toBe('exact');
  });

  test('stopped or topped out is at least, on either side of what the scale can show', () => {
    expect(use({ isLowerBound: true })).toEqual({ kind: 'at-least', loadN: 400 });
    expect(use({ loadN: 5000 })).toEqual({ kind: 'at-least', loadN: 5000 });
    expect(use({ loadN: 4999 })).toEqual({ kind: 'exact', loadN: 4999 });
  });

  test('nothing held is not the same as nothing read', () => {
    expect(use({ loadN: 0 })).toEqual({ kind: 'fell-out' });
    expect(use({ loadN: null })).toEqual({ kind: 'out', reason: 'no-load' });
    expect(use({ loadN: 0, mode: 'jig-failed' })).toEqual({ kind: 'out', reason: 'implausible' });
  });

  test.each([[-5], [1e-9], [1e9], [Number.POSITIVE_INFINITY]])('a load of %f N is a slip of the pen', (loadN) => {
    expect(use({ loadN })).toEqual({ kind: 'out', reason: 'implausible' });
  });

  test('early, at an angle, left out: out, and back in for the comparison with and without', () => {
    const early = { releasedAt: PLAIN_PULL.pulledAt + 1 };
    expect(use(early)).toEqual({ kind: 'out', reason: 'early' });
    expect(use(early, true)).toEqual({ kind: 'exact', loadN: 400 });
    expect(use({ releasedAt: PLAIN_PULL.pulledAt })).toEqual({ kind: 'exact', loadN: 400 });
    const exclusion = { reason: 'fixture-slipped', note: 'clamp', personId: 'ana', at: 0 } as const;
    expect(use({ exclusion })).toEqual({ kind: 'out', reason: 'excluded' });
    expect(use({ exclusion }, true)).toEqual({ kind: 'exact', loadN: 400 });
    expect(use({ angleDeg: 10 })).toEqual({ kind: 'exact', loadN: 400 });
    expect(use({ angleDeg: 11 })).toEqual({ kind: 'out', reason: 'at-angle' });
    expect(use({ angleDeg: 45 }, true)).toEqual({ kind: 'out', reason: 'at-angle' });
  });
});

describe('a specimen pulled more than once counts once', () => {
  const pull = (id: string, change: Partial<PullRecord>): PullRecord => ({ ...PLAIN_PULL, id, ...change });
  const uses = (...pulls: PullRecord[]) => judgePulls(pulls, { question: 'anchorage' }).map((judged) => judged.use);

  test('a proof without damage is only a note beside the failure that follows', () => {
    expect(uses(pull('1', { mode: 'held', loadN: 200 }), pull('2', { pulledAt: PLAIN_PULL.pulledAt + 1 }))).toEqual([
      { kind: 'out', reason: 'pulled-again' },
      { kind: 'exact', loadN: 400 },
    ]);
  });

  test('a first pull that left damage is the reading, and the second is void', () => {
    const first = pull('1', { mode: 'held', loadN: 300, leftDamage: true });
    expect(uses(first, pull('2', { pulledAt: PLAIN_PULL.pulledAt + 1, loadN: 150 }))).toEqual([
      { kind: 'exact', loadN: 300 },
      { kind: 'out', reason: 'pulled-before' },
    ]);
  });

  test('several proofs: the highest counts as at least; a slipped jig breaks nothing', () => {
    const later = { pulledAt: PLAIN_PULL.pulledAt + 1 };
    expect(
      uses(pull('1', { mode: 'held', loadN: 300 }), pull('2', { ...later, mode: 'jig-failed', loadN: 350 })),
    ).toEqual([
      { kind: 'out', reason: 'pulled-again' },
      { kind: 'at-least', loadN: 350 },
    ]);
  });
});

test('marks: unknown cure, topped out, scale unnamed, unchecked or checked too long ago', () => {
  const marks = (change: Partial<PullRecord>) =>
    judgePulls([{ ...PLAIN_PULL, ...change }], { question: 'bond' })[0]?.marks;
  expect(marks({})).toEqual([]);
  expect(marks({ releasedAt: null })).toEqual(['release-not-known']);
  expect(marks({ scale: null })).toEqual(['scale-not-named']);
  expect(marks({ scale: { name: 'x', greatestN: 400, checkedAt: null } })).toEqual(['topped-out', 'scale-not-checked']);
  const checked = { name: 'x', greatestN: 900, checkedAt: PLAIN_PULL.pulledAt - 184 * 24 * HOUR_MS };
  expect(marks({ scale: checked })).toEqual(['scale-not-checked']);
});

test('every code has its words', () => {
  const texts = [
    ...PULL_MODES.map(modeText),
    ...OUT_REASONS.map(outReasonText),
    ...PULL_MARKS.map(markText),
    ...EXCLUSION_REASONS.map(exclusionText),
  ];
  expect(new Set(texts).size).toBe(texts.length);
  expect(canRecur('mix-off-ratio')).toBe(true);
  expect(canRecur('specimen-dropped')).toBe(false);
});

test('readings are numbered by depth and mix; leaving some out numbers them anew', () => {
  const pulls = judgePulls(
    pullsOf(
      [
        [300, 500],
        [310, null],
        [290, 520],
      ],
      [10, 20],
    ),
    { question: 'bond' },
  );
  const series = seriesReadings(pulls);
  expect(series).toMatchObject({ depthsMm: [10, 20], mixIds: ['A', 'B', 'C'], fellOut: 0 });
  expect(series.readings.map(({ level, mix }) => [level, mix])).toEqual([
    [0, 0],
    [1, 0],
    [0, 1],
    [0, 2],
    [1, 2],
  ]);
  const rest = readingsWithout(series, ({ record }) => record.mixId === 'A');
  expect(rest.mixIds).toEqual(['B', 'C']);
  expect(rest.readings.map(({ mix }) => mix)).toEqual([0, 1, 1]);
  // A drill stop's play is not another depth.
  const near = pullsOf([[300, 310]], [10, 10.04]);
  expect(seriesReadings(judgePulls(near, { question: 'bond' })).depthsMm).toEqual([10]);
});

test('the tally counts modes, bounds, what is out, and where the wire broke', () => {
  const records = pullsOf(
    [
      [300, 500, 700],
      [310, 480, 650],
    ],
    [10, 20, 30],
  ).map((record, i): PullRecord => {
    if (i === 2) return { ...record, mode: 'wire-broke' };
    if (i === 5) return { ...record, mode: 'wire-broke' };
    return i === 0 ? { ...record, loadN: null } : record;
  });
  expect(pullTally(judgePulls(records, { question: 'anchorage' }))).toEqual({
    pulls: 6,
    modes: [
      { mode: 'wood-sleeve', pulls: 4 },
      { mode: 'wire-broke', pulls: 2 },
    ],
    exact: 3,
    atLeast: 2,
    fellOut: 0,
    out: [{ reason: 'no-load', pulls: 1 }],
    wireBrokeN: [650, 700],
  });
});

test('the moment of a pull against its release', () => {
  const release = {
    kind: 'release',
    milestone: 'pull-test',
    earliestAt: 10,
    centralAt: 20,
    latestAt: 30,
    gapMs: 0,
  } as const;
  expect(pullTiming(30, release)).toEqual({ kind: 'cured', releasedAt: 30 });
  expect(pullTiming(29, release)).toEqual({ kind: 'early', releasedAt: 30 });
  expect(pullTiming(29, { kind: 'not-stated', milestone: 'pull-test' })).toEqual({ kind: 'not-judged' });
  const never = {
    kind: 'beyond-horizon',
    milestone: 'pull-test',
    earliestAt: null,
    centralAt: null,
    horizonAt: 99,
  } as const;
  expect(pullTiming(29, never)).toEqual({ kind: 'early', releasedAt: null });
});
