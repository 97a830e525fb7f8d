import { describe, expect, test } from 'vitest';
import { bodyFromProfile } from '@/lib/geometry/body';
import { BODY_KINDS, bodyShape } from '@/lib/geometry/body-shapes';
import { coverProfile } from '@/lib/geometry/cover';
import { shankPath } from '@/lib/geometry/shank-path';
import { seededRandom } from '@/lib/statistics/seeded-random';
import { anchorStrength } from '@/lib/strength/anchor-strength';
import { demand } from '@/lib/strength/demand';
import { LINE_TYPES } from '@/lib/strength/fishing-line';
import { greatestLine } from '@/lib/strength/greatest-line';
import { leastEmbedment } from '@/lib/strength/least-embedment';
import { leastWire, usualBitMm, withWire } from '@/lib/strength/wire-choice';
import { inches, poundsForce } from '@/lib/units/force-and-length';
import { practice, SETTINGS, wire } from './designs';
import { turns } from './soak';

const SIXTEENTH = inches(1 / 16);
const COUNT = turns(2000, 150);

function lowerAt(design: ReturnType<typeof practice>, embedmentMm: number): number {
  const { atAngle } = anchorStrength({ ...design, embedmentMm }, SETTINGS);
  return atAngle.kind === 'estimate' ? atAngle.lowerN : 0;
}

test(`the least depth agrees with trying every sixteenth, ${COUNT} random anchors`, () => {
  const random = seededRandom(41);
  const pick = <T>(of: readonly T[]): T | undefined => of[Math.floor(random() * of.length)];
  let holding = 0;
  let impossible = 0;
  for (let i = 0; i < COUNT; i++) {
    const heightMm = 14 + 40 * random();
    const kind = pick(BODY_KINDS) ?? 'plug';
    const check = bodyFromProfile(bodyShape(kind, { lengthMm: 110, heightMm, widthMm: 0.7 * heightMm }), 110);
    if (!check.ok) throw new Error(check.code);
    const path = shankPath(check.body, {
      face: 'belly',
      xMm: 10 + 90 * random(),
      zMm: 0,
      slantDeg: -75 + 150 * random(),
    });
    const id = pick(['yellow-poplar', 'western-redcedar', 'balsa', 'sugar-maple']) ?? 'balsa';
    const size = pick([0.024, 0.032, 0.041, 0.051, 0.062]) ?? 0.041;
    const design = practice(id, 0.5, {
      wire: wire(size, random() < 0.3 ? 'soft' : 'spring'),
      bitDiameterMm: usualBitMm(inches(size)),
      loadAngleDeg: 90 * random() ** 2,
      cover: path.ok ? coverProfile(check.body, path.path, 40) : null,
    });
    const neededN = poundsForce(5 + 250 * random() ** 2);
    const greatestMm = path.ok ? path.path.throughMm - 3 : 40;
    const answer = leastEmbedment({ design, neededN, incrementMm: SIXTEENTH, greatestMm }, SETTINGS);
    let least: number | null = null;
    for (let steps = 1; steps <= 24 && least === null; steps++) {
      if (steps * SIXTEENTH > greatestMm + 1e-9) break;
      if (lowerAt(design, steps * SIXTEENTH) >= neededN) least = steps;
    }
    expect(answer.ok ? answer.steps : null).toBe(least);
    if (answer.ok) {
      holding++;
      expect(answer.lowerN).toBe(lowerAt(design, answer.embedmentMm));
    } else if (answer.code === 'impossible-in-this-body') impossible++;
  }
  console.log(`least depth: ${COUNT} anchors, ${holding} can hold, ${impossible} cannot in their body`);
  expect(holding).toBeGreaterThan(COUNT / 4);
  expect(impossible).toBeGreaterThan(0);
});

describe('answers that are no depth', () => {
  const base = { neededN: poundsForce(100), incrementMm: SIXTEENTH, greatestMm: 100 };
  test('an open eye: depth does not help', () => {
    const design = practice('yellow-poplar', 0.5, { eye: { insideMm: inches(3 / 16), isClosed: false } });
    expect(leastEmbedment({ ...base, design }, SETTINGS)).toMatchObject({
      ok: false,
      code: 'depth-does-not-help',
      governs: 'eye-opens',
    });
  });
  test('a thin body: impossible there', () => {
    expect(leastEmbedment({ ...base, design: practice('balsa', 0.5), greatestMm: 12.7 }, SETTINGS)).toMatchObject({
      ok: false,
      code: 'impossible-in-this-body',
    });
    expect(leastEmbedment({ ...base, design: practice('balsa', 0.5), greatestMm: 2 }, SETTINGS)).toEqual({
      ok: false,
      code: 'impossible-in-this-body',
      bestN: null,
    });
  });
  test('an unknown adhesive: no estimate', () => {
    expect(leastEmbedment({ ...base, design: practice('balsa', 0.5, { belief: null }) }, SETTINGS)).toMatchObject({
      ok: false,
      code: 'no-estimate',
      reasons: ['no-pulls-of-this-adhesive'],
    });
  });
  test('wrong questions are refused', () => {
    const design = practice('balsa', 0.5);
    expect(() => leastEmbedment({ ...base, design, incrementMm: 0 }, SETTINGS)).toThrow(RangeError);
    expect(() => leastEmbedment({ ...base, design, neededN: Number.NaN }, SETTINGS)).toThrow(RangeError);
  });
});

test(`the heaviest line agrees with trying every pound, ${COUNT} random anchors`, () => {
  const random = seededRandom(43);
  for (let i = 0; i < COUNT; i++) {
    const type = LINE_TYPES[Math.floor(random() * LINE_TYPES.length)] ?? 'mono';
    const line = { type, knotShare: random() < 0.5 ? null : 0.5 + 0.5 * random(), dragShare: null };
    const fishMassG = random() < 0.3 ? 200 + 3000 * random() : null;
    const lowerN = poundsForce(300 * random());
    const stepN = poundsForce(1);
    const holds = (steps: number) =>
      1.95 * demand({ ...line, labelN: steps * stepN }, fishMassG).governing.loadN <= lowerN;
    let best: number | null = null;
    for (let steps = 1; holds(steps); steps++) best = steps;
    const answer = greatestLine({ lowerN, line, fishMassG, requiredFactor: 1.95, stepN });
    expect(answer.ok ? answer.steps : null).toBe(best);
  }
});

test('the least wire is the thinnest that holds, with the bit that goes with it', () => {
  const choices = [0.062, 0.024, 0.041, 0.032, 0.051].map((size) => ({
    id: `${size}`,
    name: `${size}`,
    wire: wire(size),
  }));
  const design = practice('western-redcedar', 0.5, { wire: wire(0.024), bitDiameterMm: usualBitMm(inches(0.024)) });
  for (const load of [20, 40, 60, 80, 100, 400]) {
    const found = leastWire(design, choices, poundsForce(load), SETTINGS);
    const holding = choices.filter((choice) => lowerAt(withWire(design, choice), inches(0.5)) >= poundsForce(load));
    expect(found?.wire.diameterMm ?? null).toBe(
      holding.length === 0 ? null : Math.min(...holding.map((choice) => choice.wire.diameterMm)),
    );
  }
});

test('the usual bit of .041 wire is 5/64, of .032 1/16, of .051 7/64', () => {
  expect(usualBitMm(inches(0.041))).toBeCloseTo(inches(5 / 64), 9);
  expect(usualBitMm(inches(0.032))).toBeCloseTo(inches(4 / 64), 9);
  expect(usualBitMm(inches(0.051))).toBeCloseTo(inches(7 / 64), 9);
});
