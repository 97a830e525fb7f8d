import { describe, expect, test } from 'vitest';
import { type CalibrationPull, calibrationDraft, strengthReadings } from '@/lib/pulltest/calibration';
import { judgePulls } from '@/lib/pulltest/judge-pulls';
import { movedAnchors } from '@/lib/pulltest/moved-anchors';
import { PULL_STEPS, pullCautions } from '@/lib/pulltest/pull-cautions';
import type { PullRecord } from '@/lib/pulltest/pull-record';
import { kappaPrior } from '@/lib/strength/kappa-prior';
import { kappaReading } from '@/lib/strength/pull-reading';
import { updatedBelief } from '@/lib/strength/updated-belief';
import { inches, poundsForce } from '@/lib/units/force-and-length';
import { practice, priorBelief, SETTINGS, wood } from '../strength/designs';
import { pullsOf } from './make-series';

const DEPTHS = [0.25, 0.5, 0.75].map(inches);
const LOADS = [
  [98, 180, 250],
  [105, 190, 262],
  [92, 171, 238],
].map((row) => row.map(poundsForce));
const pulls = (change: (pull: PullRecord, i: number) => PullRecord = (pull) => pull) =>
  judgePulls(pullsOf(LOADS, DEPTHS).map(change), { question: 'anchorage' });

describe('a calibration', () => {
  test('takes every pull along, with what it says and why one does not count', () => {
    const draft = calibrationDraft(
      pulls((pull, i) => {
        if (i === 0) return { ...pull, mode: 'held' };
        if (i === 1) return { ...pull, exclusion: { reason: 'wrong-depth', note: '', personId: null, at: 0 } };
        return i === 2 ? { ...pull, mode: 'split' } : pull;
      }),
    );
    if (!draft.ok) throw new Error(draft.code);
    expect(draft.pulls).toHaveLength(9);
    expect(draft.pulls.slice(0, 3)).toMatchObject([
      { failure: 'jig-failed', isLowerBound: true, excludedReason: null },
      { excludedReason: 'left out for a physical reason' },
      { failure: 'split', isLowerBound: false, excludedReason: null },
    ]);
    expect(draft.warnings).toEqual(['fewer-than-8-failed']);
  });

  test('nine good pulls in three mixes: no warnings, and a bend over depth', () => {
    const draft = calibrationDraft(pulls());
    expect(draft).toMatchObject({ ok: true, warnings: [], saturation: { ok: true, form: 'tanh' } });
    if (!draft.ok || !draft.saturation.ok) return;
    // The loads were drawn near 25.4 mm of saturation.
    expect(1 / draft.saturation.rate).toBeGreaterThan(18);
    expect(1 / draft.saturation.rate).toBeLessThan(35);
  });

  test('nothing that counts, or a joint that came out by hand, calibrates nothing', () => {
    expect(calibrationDraft([])).toEqual({ ok: false, code: 'no-readings' });
    expect(calibrationDraft(pulls((pull, i) => (i === 4 ? { ...pull, loadN: 0 } : pull)))).toEqual({
      ok: false,
      code: 'fell-out',
    });
  });
});

describe('what it would move', () => {
  function beliefAfter(factor: number) {
    const draft = calibrationDraft(pulls((pull) => ({ ...pull, loadN: (pull.loadN ?? 0) * factor })));
    if (!draft.ok) throw new Error(draft.code);
    const depthOf = new Map(pullsOf(LOADS, DEPTHS).map(({ id, embedmentMm }) => [id, embedmentMm]));
    const readings = strengthReadings(draft, (id) => ({
      wood: wood('yellow-poplar'),
      wireDiameterMm: inches(0.041),
      bitDiameterMm: inches(5 / 64),
      embedmentMm: depthOf.get(id) ?? 0,
      voidMm: 0,
      cover: null,
      temperatureC: 21,
    }));
    const kappas = readings.flatMap((reading) => kappaReading(reading, SETTINGS.saturationMm) ?? []);
    expect(kappas).toHaveLength(9);
    return updatedBelief(kappaPrior('slow-epoxy'), kappas, SETTINGS.lower);
  }

  const anchors = (required: number) => [
    { key: 'popper A', design: practice('yellow-poplar', 0.5), requiredN: poundsForce(required) },
    { key: 'minnow B', design: practice('yellow-poplar', 0.25), requiredN: null },
  ];

  test('pulls nearer together than the prior raise the lower value and turn a short into holds', () => {
    const moved = movedAnchors(anchors(120), beliefAfter(1), SETTINGS);
    expect(moved[0]).toMatchObject({
      key: 'popper A',
      isFlipped: true,
      before: { outcome: 'short' },
      after: { outcome: 'holds' },
    });
    expect(moved[1]).toMatchObject({ key: 'minnow B', isFlipped: false, after: { outcome: 'not-judged' } });
    expect(moved[1]?.after.lowerN).toBeGreaterThan(moved[1]?.before.lowerN ?? 0);
  });

  test('weak pulls turn holds into short; the same belief moves nothing', () => {
    expect(movedAnchors(anchors(80), beliefAfter(0.4), SETTINGS)[0]).toMatchObject({
      before: { outcome: 'holds' },
      after: { outcome: 'short' },
    });
    expect(movedAnchors(anchors(80), priorBelief(), SETTINGS)).toEqual([]);
  });

  test('specimens that are gone are left out', () => {
    const pull: CalibrationPull = {
      pullId: 'x',
      loadN: 1,
      failure: 'split',
      isLowerBound: false,
      excludedReason: null,
    };
    expect(strengthReadings({ pulls: [pull] }, () => null)).toEqual([]);
  });
});

test('the cautions of issue and step: shield, line of pull, tether, hooks, no jerking, rated shackles, never sell', () => {
  const text = PULL_STEPS.flatMap(pullCautions).join(' ');
  for (const word of ['shield', 'line of pull', 'ether', 'hook', 'jerk', 'hackles', 'never sell'])
    expect(text).toContain(word);
});
