import { bodyShape } from '@/lib/geometry/body-shapes';
import { findingsOf } from '@/lib/spec/findings-of';
import { wireHabits } from '@/lib/spec/shop-use';
import { specContext } from '@/lib/spec/spec-context';
import type { SpecAnchor, SpecModel } from '@/lib/spec/spec-model';
import { seededRandom } from '@/lib/statistics/seeded-random';
import { inches, poundsForce } from '@/lib/units/force-and-length';
import { hanger, line, popper, shop, wireOf, woodOf } from '../lib/spec/models';

/** The rules of a spec: one model with and without fixes, and a shop of 500 models with 20 revisions each. */

const MODELS = 500;
const REVISIONS = 20;
const SIZES = [0.032, 0.041, 0.051] as const;
const WOODS = ['yellow-poplar', 'western-redcedar', 'sugar-maple', 'basswood'] as const;

function pick<T>(random: () => number, of: readonly [T, ...T[]]): T {
  return of[Math.floor(random() * of.length)] ?? of[0];
}

/** A body of its own with line tie, one or two belly hangers and a tail hanger. */
function firstRevision(index: number, random: () => number): SpecModel {
  const lengthMm = 70 + 90 * random();
  const heightMm = lengthMm * (0.22 + 0.1 * random());
  const measures = { lengthMm, heightMm, widthMm: 0.8 * heightMm };
  const kind = pick(random, ['lipless', 'popper', 'minnow', 'jerkbait', 'plug'] as const);
  const size = pick(random, SIZES);
  const wire = {
    wire: wireOf(size),
    wireDiameterMm: inches(size),
    bitDiameterMm: inches(size === 0.032 ? 1 / 16 : 5 / 64),
  };
  const anchors = [
    hanger('tie', { ...wire, role: 'line-tie', face: 'nose', zMm: 0, hook: null, splitRing: null }),
    hanger('belly', { ...wire, xMm: 0.35 * lengthMm, loadAngleDeg: 40 }),
    hanger('tail', { ...wire, role: 'tail-hanger', face: 'tail', zMm: 0 }),
  ];
  return popper({
    modelId: `model-${index}`,
    modelName: `Model ${index}`,
    revisionId: `model-${index}-A`,
    body: { stations: bodyShape(kind, measures), lengthMm },
    wood: woodOf(pick(random, WOODS)),
    anchors,
    line: line(8 + Math.floor(40 * random())),
  });
}

/** The next revision: one thing changed, and every id new, as the database makes them. */
function nextRevision(before: SpecModel, revision: number, random: () => number): SpecModel {
  const at = Math.floor(random() * before.anchors.length);
  const changed: Partial<SpecAnchor> =
    random() < 0.6
      ? {
          embedmentMm: inches(Math.round(6 + 8 * random()) / 16),
          drillDepthMm: inches(Math.round(8 + 8 * random()) / 16),
        }
      : { loadAngleDeg: Math.round(60 * random()) };
  const anchors = before.anchors.map((anchor, i) => ({
    ...anchor,
    ...(i === at ? changed : {}),
    anchorId: `${before.modelId}-${revision}-${i}`,
  }));
  const labelN = random() < 0.3 ? poundsForce(8 + Math.floor(40 * random())) : (before.line?.labelN ?? 0);
  return {
    ...before,
    revisionId: `${before.modelId}-${revision}`,
    anchors,
    line: before.line === null ? null : { ...before.line, labelN },
  };
}

function bigShop(): readonly SpecModel[] {
  const random = seededRandom(11);
  return Array.from({ length: MODELS }, (_, i) => {
    const revisions = [firstRevision(i, random)];
    for (let k = 1; k < REVISIONS; k++) revisions.push(nextRevision(revisions.at(-1) ?? popper(), k, random));
    // As rows come: bodies and anchors are read anew for each revision, materials once.
    return revisions.map(
      (one): SpecModel => ({
        ...one,
        body: JSON.parse(JSON.stringify(one.body)),
        anchors: one.anchors.map((anchor) => ({ ...anchor })),
      }),
    );
  }).flat();
}

function median(times: readonly number[]): number {
  return [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;
}

/** Prints one line a figure. */
export function run(): void {
  const fresh = (withFixes: boolean) => specContext(shop(), { withFixes });
  const timed = (model: SpecModel, withFixes: boolean) => {
    const context = fresh(withFixes);
    const start = performance.now();
    findingsOf(model, context);
    return performance.now() - start;
  };
  const heavy = popper({ line: line(80, 'braid') });
  const cases = [
    ['holds', popper(), true],
    ['short throughout', heavy, false],
    ['short throughout, with its fixes', heavy, true],
  ] as const;
  for (const [what, model, withFixes] of cases) {
    const first = timed(model, withFixes);
    const times = Array.from({ length: 200 }, () => timed(model, withFixes));
    console.log(
      `findings of one model, ${what}: ${median(times).toFixed(2)} ms (the very first ${first.toFixed(1)} ms)`,
    );
  }
  const drag = fresh(false);
  const moved = Array.from({ length: 200 }, (_, i) => {
    const anchors = heavy.anchors.map((one) => (one.anchorId === 'belly' ? { ...one, slantDeg: 0.3 * i } : one));
    const start = performance.now();
    findingsOf({ ...heavy, anchors }, drag);
    return performance.now() - start;
  });
  console.log(
    `findings while an anchor is dragged: ${median(moved).toFixed(2)} ms, at worst ${Math.max(...moved).toFixed(1)} ms`,
  );

  const all = bigShop();
  const latest = all.filter((_, i) => i % REVISIONS === REVISIONS - 1);
  let start = performance.now();
  const habits = wireHabits(latest);
  const context = specContext(shop({ habits }), { withFixes: false });
  let shorts = 0;
  let findings = 0;
  for (const model of all) {
    const found = findingsOf(model, context);
    findings += found.length;
    for (const one of found) if (one.verdict === 'short') shorts++;
  }
  console.log(
    `shop of ${MODELS} models x ${REVISIONS} revisions: ${(performance.now() - start).toFixed(0)} ms, ${findings} findings, ${shorts} short`,
  );
  start = performance.now();
  for (const model of latest) findingsOf(model, context);
  console.log(`the ${MODELS} revisions in use again: ${(performance.now() - start).toFixed(0)} ms`);
}
