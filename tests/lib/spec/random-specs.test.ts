import { expect, test } from 'vitest';
import { applyFix } from '@/lib/spec/apply-fix';
import type { Finding } from '@/lib/spec/finding';
import { findingsOf } from '@/lib/spec/findings-of';
import type { RuleId } from '@/lib/spec/rule-id';
import { specContext } from '@/lib/spec/spec-context';
import type { SpecAnchor, SpecModel } from '@/lib/spec/spec-model';
import { seededRandom } from '@/lib/statistics/seeded-random';
import { turns } from '../strength/soak';
import { context, shop } from './models';
import { randomSpec } from './random-spec';

const fine = (value: number | null | undefined) => value != null && value > 0 && value <= 2000;
const glued = ({ kind }: SpecAnchor) => kind === 'twisted-wire';
const isPlaced = (model: SpecModel, { face, slantDeg, xMm, zMm }: SpecAnchor) =>
  model.body !== null &&
  face !== null &&
  slantDeg !== null &&
  (face === 'belly' || face === 'back' ? xMm : zMm) !== null;
const hasWire = ({ wire, wireDiameterMm }: SpecAnchor) => wire?.sheet?.temper != null && fine(wireDiameterMm);
const hasEye = ({ eyeInsideMm, isEyeClosed }: SpecAnchor) => fine(eyeInsideMm) && isEyeClosed !== null;

/** Whatever the strength of an anchor rests on. */
function hasStrength(model: SpecModel, anchor: SpecAnchor): boolean {
  if (anchor.kind === 'through-wire') return hasWire(anchor) && hasEye(anchor);
  const wood = model.wood?.sheet != null && isPlaced(model, anchor);
  const depth = fine(anchor.embedmentMm) && anchor.loadAngleDeg !== null;
  if (anchor.kind === 'screw-eye') return wood && depth && anchor.screwEye?.sheet != null;
  return (
    wood &&
    depth &&
    hasWire(anchor) &&
    hasEye(anchor) &&
    fine(anchor.bitDiameterMm) &&
    fine(anchor.twistPitchMm) &&
    anchor.adhesive?.sheet != null
  );
}

/** What must be there before a rule may say "holds". */
const NEEDS: Readonly<Record<RuleId, (model: SpecModel, anchor: SpecAnchor) => boolean>> = {
  'strength-demand': (model, anchor) => model.line !== null && hasStrength(model, anchor),
  'first-bending': (model, anchor) => model.line !== null && hasStrength(model, anchor),
  'least-embedment': (_, { embedmentMm }) => fine(embedmentMm),
  cover: (model, anchor) => isPlaced(model, anchor) && fine(anchor.embedmentMm),
  'bit-fit': (_, anchor) =>
    fine(anchor.bitDiameterMm) && (glued(anchor) ? fine(anchor.wireDiameterMm) : anchor.screwEye?.sheet != null),
  'drill-depth': (_, { embedmentMm, drillDepthMm }) => fine(embedmentMm) && fine(drillDepthMm),
  'body-room': (model, anchor) => isPlaced(model, anchor) && (fine(anchor.drillDepthMm) || fine(anchor.embedmentMm)),
  'holes-meet': (model) =>
    model.anchors
      .filter(glued)
      .every((one) => isPlaced(model, one) && fine(one.bitDiameterMm) && fine(one.drillDepthMm)),
  'through-wire': (model, anchor) =>
    model.wood?.sheet != null &&
    (!glued(anchor) ||
      (model.line !== null && anchor.wire !== null && fine(anchor.bitDiameterMm) && anchor.adhesive?.sheet != null)),
  'wire-stated': (_, anchor) => hasWire(anchor),
  'weakest-link': (model, anchor) =>
    model.line !== null &&
    hasStrength(model, anchor) &&
    [anchor.hook, anchor.splitRing].every((one) => one === null || one.sheet?.statedStrengthN !== undefined),
  'hooks-foul': (model, anchor) => isPlaced(model, anchor) && fine(anchor.hook?.sheet?.lengthMm),
  'shop-consistency': (_, anchor) =>
    anchor.wire !== null &&
    fine(anchor.wireDiameterMm) &&
    fine(anchor.bitDiameterMm) &&
    fine(anchor.embedmentMm) &&
    anchor.adhesive !== null,
  'bill-matches': (model) => model.bill !== null && model.anchors.length > 0,
  'adhesive-suits': (_, { adhesive }) =>
    fine(adhesive?.sheet?.maxGapMm) && adhesive?.sheet?.water !== undefined && adhesive.sheet.maxServiceC !== undefined,
  'calibration-fresh': (model, { wire, adhesive }) => model.wood !== null && wire !== null && adhesive !== null,
};

const SPECS = turns(100_000, 3000);

test(`${SPECS} random specs: never throws, and nothing missing is said to hold`, { timeout: 300_000 }, () => {
  const random = seededRandom(7);
  const judging = specContext(shop(), { withFixes: false });
  const count = { holds: 0, short: 0, 'not-judged': 0 };
  for (let i = 0; i < SPECS; i++) {
    const model = { ...randomSpec(random), modelId: `m${i % 50}` };
    const findings = findingsOf(model, judging);
    for (const finding of findings) {
      count[finding.verdict]++;
      check(finding, model);
    }
    if (i % 97 === 0 && !isPlain(findings)) expect.fail(`findings would not survive JSON: ${JSON.stringify(model)}`);
  }
  console.log(`random specs: ${SPECS}, ${JSON.stringify(count)}`);
  expect(count.holds).toBeGreaterThan(SPECS);
  expect(count.short).toBeGreaterThan(SPECS);
});

/** Whether JSON keeps all of it: no function, nothing undefined, no NaN. */
function isPlain(value: unknown): boolean {
  if (typeof value === 'number') return Number.isFinite(value);
  if (typeof value !== 'object') return typeof value === 'string' || typeof value === 'boolean';
  return value === null || Object.values(value).every(isPlain);
}

function check({ ruleId, subject, verdict, words, missing, figures, advice }: Finding, model: SpecModel): void {
  const anchor = model.anchors.find(({ anchorId }) => anchorId === subject.key) ?? model.anchors[0];
  if (verdict === 'holds' && (anchor === undefined || !NEEDS[ruleId](model, anchor))) {
    expect.fail(`${ruleId} holds though an input is missing: ${JSON.stringify(model)}`);
  }
  if (verdict === 'holds' ? missing.length > 0 : verdict === 'not-judged' && words.length + missing.length === 0) {
    expect.fail(`${ruleId} ${verdict} says ${JSON.stringify({ words, missing })}`);
  }
  if (verdict === 'short' && (advice === null || words.length === 0)) expect.fail(`${ruleId} is short without words`);
  for (const part of words) {
    if (typeof part !== 'string' && !Number.isFinite(part.value))
      expect.fail(`${ruleId} says ${JSON.stringify(words)}`);
  }
  for (const { name, quantity } of figures) {
    if (!Number.isFinite(quantity.value)) expect.fail(`${ruleId}: ${name} is ${quantity.value}`);
  }
}

const FIXED = turns(3000, 150);

test(`fixes of ${FIXED} random specs make it hold, the least change first`, { timeout: 300_000 }, () => {
  const random = seededRandom(8);
  let fixes = 0;
  for (let i = 0; i < FIXED; i++) {
    const model = randomSpec(random);
    const judging = context();
    for (const { ruleId, subject, fixes: offered } of findingsOf(model, judging)) {
      for (const [k, fix] of offered.entries()) {
        fixes++;
        const after = findingsOf(applyFix(model, fix), specContext(shop(), { withFixes: false }));
        const now = after.find((one) => one.ruleId === ruleId && one.subject.key === subject.key);
        expect(now?.verdict ?? 'holds', `${ruleId} ${fix.way}`).toBe('holds');
        const next = offered[k + 1];
        if (next?.makesShort.length === 0) expect(fix.makesShort).toEqual([]);
        if (next !== undefined && next.makesShort.length > 0 === fix.makesShort.length > 0) {
          expect(next.size).toBeGreaterThanOrEqual(fix.size);
        }
      }
    }
  }
  console.log(`random specs: ${fixes} fixes tried again`);
  expect(fixes).toBeGreaterThan(FIXED);
});
