import { describe, expect, test } from 'vitest';
import type { Finding, Verdict } from '@/lib/spec/finding';
import { findingsOf } from '@/lib/spec/findings-of';
import { RULE_IDS, type RuleId } from '@/lib/spec/rule-id';
import { RULES } from '@/lib/spec/rules';
import { wireHabits } from '@/lib/spec/shop-use';
import type { SpecAnchor, SpecModel } from '@/lib/spec/spec-model';
import { inches } from '@/lib/units/force-and-length';
import { lbf } from '../../strength/designs';
import {
  context,
  EPOXY,
  fitting,
  found,
  HOOK,
  hanger,
  line,
  NOW,
  popper,
  pulled,
  wireOf,
  withBelly,
  woodOf,
} from '../models';

const DAY = 86_400_000;
const figure = (finding: Finding | undefined, name: string) =>
  finding?.figures.find((one) => one.name === name)?.quantity.value;
const plain = (finding: Finding | undefined) =>
  (finding?.words ?? []).map((part) => (typeof part === 'string' ? part : `<${part.value.toFixed(2)}>`)).join('');

test('every rule has its id once, its formula, a source and assumptions', () => {
  expect(RULES.map(({ id }) => id)).toEqual(RULE_IDS);
  for (const rule of RULES) {
    expect(rule.formula, rule.id).not.toBe('');
    expect(rule.source.text, rule.id).not.toBe('');
    expect(rule.assumptions.length, rule.id).toBeGreaterThan(0);
  }
});

test('a popper that is right in every respect holds throughout', () => {
  const findings = findingsOf(popper(), context());
  expect(findings.filter(({ verdict }) => verdict !== 'holds')).toEqual([]);
  expect(new Set(findings.map(({ ruleId }) => ruleId)).size).toBe(RULE_IDS.length - 1); // nothing is pulled aslant
});

interface Case {
  readonly rule: RuleId;
  readonly what: string;
  readonly change: Partial<SpecAnchor>;
  readonly model?: Partial<SpecModel>;
  readonly verdict: Verdict;
  readonly missing?: readonly string[];
}

const inch = inches(1);
const screwEye = {
  materialId: 'screw',
  name: 'screw',
  sheet: {
    threadDiameterMm: 2.67,
    threadLengthMm: 12.7,
    eyeInsideMm: 4.8,
    isEyeClosed: true,
    statedStrengthN: 400,
    sources: {},
  },
};
const screw: Partial<SpecAnchor> = { kind: 'screw-eye', screwEye, wire: null, adhesive: null };

const CASES: readonly Case[] = [
  {
    rule: 'strength-demand',
    what: 'no line',
    change: {},
    model: { line: null },
    verdict: 'not-judged',
    missing: ['line'],
  },
  {
    rule: 'strength-demand',
    what: 'no temper',
    change: { wire: wireOf(0.041, null) },
    verdict: 'not-judged',
    missing: ['temper'],
  },
  {
    rule: 'strength-demand',
    what: 'balsa not weighed',
    change: {},
    model: { wood: woodOf('balsa', null) },
    verdict: 'not-judged',
    missing: ['wood-figures'],
  },
  {
    rule: 'strength-demand',
    what: 'two inches deep: outside the box',
    change: { embedmentMm: 2 * inch },
    verdict: 'not-judged',
  },
  { rule: 'strength-demand', what: 'an open eye', change: { isEyeClosed: false }, verdict: 'short' },
  { rule: 'strength-demand', what: 'a screw eye', change: screw, verdict: 'holds' },
  { rule: 'strength-demand', what: 'a wire that runs through', change: { kind: 'through-wire' }, verdict: 'holds' },
  { rule: 'first-bending', what: 'at 60°, 17 lb', change: { loadAngleDeg: 60 }, verdict: 'holds' },
  {
    rule: 'first-bending',
    what: 'square, 80 lb',
    change: { loadAngleDeg: 90 },
    model: { line: line(80, 'braid') },
    verdict: 'short',
  },
  {
    rule: 'first-bending',
    what: 'angle not known',
    change: { loadAngleDeg: null },
    verdict: 'not-judged',
    missing: ['load-angle'],
  },
  { rule: 'least-embedment', what: 'half an inch to the hair', change: { embedmentMm: 12.7 }, verdict: 'holds' },
  { rule: 'least-embedment', what: 'a hundredth less', change: { embedmentMm: 12.69 }, verdict: 'short' },
  {
    rule: 'least-embedment',
    what: 'not entered',
    change: { embedmentMm: null },
    verdict: 'not-judged',
    missing: ['embedment'],
  },
  { rule: 'cover', what: 'aslant under the skin', change: { slantDeg: 80, xMm: 30 }, verdict: 'short' },
  { rule: 'cover', what: 'no body', change: {}, model: { body: null }, verdict: 'not-judged', missing: ['body'] },
  { rule: 'bit-fit', what: '.041 in 5/64: slight interference', change: {}, verdict: 'holds' },
  { rule: 'bit-fit', what: '.041 in 1/16: too tight', change: { bitDiameterMm: inch / 16 }, verdict: 'short' },
  {
    rule: 'bit-fit',
    what: '.041 in 5/32: a gap of .037 in',
    change: { bitDiameterMm: (5 / 32) * inch },
    verdict: 'holds',
  },
  { rule: 'bit-fit', what: '.041 in 3/16: loose', change: { bitDiameterMm: (3 / 16) * inch }, verdict: 'short' },
  {
    rule: 'bit-fit',
    what: 'a screw eye in a hole wider than its thread',
    change: { ...screw, bitDiameterMm: 3 },
    verdict: 'short',
  },
  { rule: 'bit-fit', what: 'no bit', change: { bitDiameterMm: null }, verdict: 'not-judged', missing: ['bit'] },
  { rule: 'drill-depth', what: 'a sixteenth over', change: { drillDepthMm: (9 / 16) * inch }, verdict: 'holds' },
  { rule: 'drill-depth', what: 'an eighth over: a void', change: { drillDepthMm: (5 / 8) * inch }, verdict: 'short' },
  { rule: 'drill-depth', what: 'too shallow', change: { drillDepthMm: (3 / 8) * inch }, verdict: 'short' },
  { rule: 'body-room', what: 'through the back', change: { drillDepthMm: 40 }, verdict: 'short' },
  { rule: 'body-room', what: 'beside the body', change: { xMm: 200 }, verdict: 'short' },
  {
    rule: 'body-room',
    what: 'depth not known',
    change: { drillDepthMm: null },
    verdict: 'not-judged',
    missing: ['drill-depth'],
  },
  {
    rule: 'holes-meet',
    what: 'below the line tie',
    change: { xMm: 8, drillDepthMm: 17, embedmentMm: 17 },
    verdict: 'short',
  },
  { rule: 'through-wire', what: 'balsa', change: {}, model: { wood: woodOf('balsa') }, verdict: 'short' },
  {
    rule: 'through-wire',
    what: 'balsa, run through',
    change: { kind: 'through-wire' },
    model: { wood: woodOf('balsa') },
    verdict: 'holds',
  },
  {
    rule: 'through-wire',
    what: 'a light cedar',
    change: {},
    model: { wood: woodOf('western-redcedar') },
    verdict: 'holds',
  },
  {
    rule: 'wire-stated',
    what: 'no temper',
    change: { wire: wireOf(0.041, null) },
    verdict: 'not-judged',
    missing: ['temper'],
  },
  {
    rule: 'wire-stated',
    what: 'another diameter than its sheet',
    change: { wireDiameterMm: inches(0.047) },
    verdict: 'short',
  },
  {
    rule: 'weakest-link',
    what: 'a hook that opens at 15 lb',
    change: { hook: fitting('hook', 15, 18) },
    verdict: 'short',
  },
  {
    rule: 'weakest-link',
    what: 'a ring nobody speaks for',
    change: { splitRing: fitting('ring', undefined, 6) },
    verdict: 'not-judged',
    missing: ['ring-strength'],
  },
  {
    rule: 'weakest-link',
    what: 'an unknown ring, but a hook that is too weak',
    change: { hook: fitting('hook', 15, 18), splitRing: fitting('ring', undefined, 6) },
    verdict: 'short',
  },
  { rule: 'hooks-foul', what: 'close to the tail', change: { xMm: 75 }, verdict: 'short' },
  {
    rule: 'hooks-foul',
    what: 'a hook that reaches round',
    change: { hook: fitting('hook', 60, 45), xMm: 30 },
    verdict: 'short',
  },
  {
    rule: 'hooks-foul',
    what: 'its length not known',
    change: { hook: fitting('hook', 60, undefined) },
    verdict: 'not-judged',
    missing: ['hook-length'],
  },
  {
    rule: 'adhesive-suits',
    what: 'not made for water',
    change: {
      adhesive: {
        ...EPOXY,
        sheet: { bondClass: 'slow-epoxy', maxGapMm: 1, water: 'none', maxServiceC: 60, sources: {} },
      },
    },
    verdict: 'short',
  },
  {
    rule: 'adhesive-suits',
    what: 'fills .1 mm, the gap is wider',
    change: {
      bitDiameterMm: 3,
      adhesive: {
        ...EPOXY,
        sheet: { bondClass: 'slow-epoxy', maxGapMm: 0.1, water: 'immersion', maxServiceC: 60, sources: {} },
      },
    },
    verdict: 'short',
  },
  {
    rule: 'adhesive-suits',
    what: 'nothing known of it',
    change: { adhesive: { ...EPOXY, sheet: null } },
    verdict: 'not-judged',
    missing: ['adhesive-figures'],
  },
  {
    rule: 'calibration-fresh',
    what: 'another wire, never pulled',
    change: { wire: wireOf(0.051), wireDiameterMm: inches(0.051) },
    verdict: 'not-judged',
    missing: ['pulls'],
  },
];

test.each(CASES)('$rule: $what, $verdict', ({ rule, change, model, verdict, missing }) => {
  const finding = found(rule, withBelly(change, model));
  expect(finding?.verdict, plain(finding)).toBe(verdict);
  if (missing !== undefined) expect(finding?.missing).toEqual(expect.arrayContaining([...missing]));
  if (verdict === 'not-judged')
    expect((finding?.missing.length ?? 0) + (finding?.words.length ?? 0)).toBeGreaterThan(0);
  if (verdict === 'short') expect(finding?.advice).not.toBeNull();
});

describe('figures', () => {
  test('the practice value: half an inch in yellow-poplar, 17 lb mono', () => {
    const finding = found('strength-demand', popper(), { subject: 'tie' });
    expect(lbf(figure(finding, 'Lower value at its angle') ?? 0)).toBeCloseTo(103.6, 0);
    expect(lbf(figure(finding, 'Greatest load') ?? 0)).toBeCloseTo(17 * 1.25 * 0.95, 2);
    expect(figure(finding, 'Factor')).toBeCloseTo(5.13, 1);
  });
  test('fit of a pair: .082 in over 5/64 in interferes by .0039 in', () => {
    expect(figure(found('bit-fit', popper()), 'Interference')).toBeCloseTo(inches(0.003875), 4);
    expect(found('bit-fit', popper())?.cautions).toHaveLength(1);
  });
  test('cover is asked in diameters of the wider of pair and hole', () => {
    const finding = found('cover', withBelly({ slantDeg: 80, xMm: 30 }));
    expect(figure(finding, 'Least asked')).toBeCloseTo(1.5 * inches(0.082), 6);
    expect(figure(finding, 'Full cover')).toBeCloseTo(2.5 * inches(0.082), 6);
  });
  test('wood under a hole: a body 32 mm high at its thickest, 1/2 in drilled', () => {
    const finding = found('body-room', popper());
    const there = figure(finding, 'Wood there') ?? 0;
    expect(figure(finding, 'Wood left under it')).toBeCloseTo(there - 12.7, 9);
  });
  test('hooks: ring and hook laid end to end', () => {
    expect(figure(found('hooks-foul', popper()), 'Reach of its hook')).toBe(24);
  });
});

describe('the bill', () => {
  const bill = popper().bill ?? [];
  test('no bill is not judged, a hook too few is short and is put right', () => {
    expect(found('bill-matches', popper({ bill: null }), { subject: 'model' })).toMatchObject({ missing: ['bill'] });
    const few = bill.map((one) => (one.materialId === 'hook' ? { ...one, quantity: 1 } : one));
    const finding = found('bill-matches', popper({ bill: few }), { subject: 'model' });
    expect(finding?.verdict).toBe('short');
    expect(finding?.fixes[0]?.changes).toEqual([
      { kind: 'bill', line: { materialId: 'hook', quantity: 2, quantityUnit: 'pieces' } },
    ]);
  });
  test('hooks listed by weight, and glue not listed', () => {
    const grams = bill.map((one) => (one.materialId === 'hook' ? { ...one, quantityUnit: 'g' as const } : one));
    expect(found('bill-matches', popper({ bill: grams }), { subject: 'model' })?.verdict).toBe('short');
    const noGlue = bill.filter(({ materialId }) => materialId !== 'epoxy');
    expect(found('bill-matches', popper({ bill: noGlue }), { subject: 'model' })).toMatchObject({
      verdict: 'short',
      fixes: [],
    });
  });
  test('a model without anchors is not judged', () => {
    expect(findingsOf(popper({ anchors: [] }), context())).toMatchObject([
      { verdict: 'not-judged', missing: ['anchors'] },
    ]);
  });
});

describe('calibration', () => {
  const verdict = (more: Parameters<typeof context>[0]) =>
    found('calibration-fresh', popper(), { of: context(more) })?.verdict;
  test('366 days old is short, 365 holds', () => {
    expect(verdict({ bonds: [pulled({ latestPulledAt: NOW - 365 * DAY })] })).toBe('holds');
    expect(verdict({ bonds: [pulled({ latestPulledAt: NOW - 366 * DAY })] })).toBe('short');
  });
  test('another lot is short, no lot in use is not judged', () => {
    expect(verdict({ lotsInUse: [{ materialId: 'epoxy', lotCode: 'L2' }] })).toBe('short');
    expect(verdict({ lotsInUse: [] })).toBe('not-judged');
  });
});

describe('the same wire across the shop', () => {
  const other = (id: string, depth: number) =>
    popper({ modelId: id, modelName: id, anchors: [hanger(`${id}-belly`, { embedmentMm: inches(depth) })] });
  const of = (...models: readonly SpecModel[]) => context({ habits: wireHabits(models) });
  test('as the others, or with them as the fix', () => {
    const shopUse = of(other('a', 0.75), other('b', 0.75), other('c', 0.5), popper());
    const finding = found('shop-consistency', popper(), { of: shopUse });
    expect(finding?.verdict).toBe('short');
    expect(plain(finding)).toBe('Of this wire <2.00> other anchors of the shop are made otherwise: <19.05> deep.');
    expect(finding?.fixes[0]?.changes[0]).toMatchObject({
      set: { embedmentMm: inches(0.75), drillDepthMm: inches(0.75) },
    });
    expect(found('shop-consistency', withBelly({ embedmentMm: inches(0.75) }), { of: shopUse })?.verdict).toBe('holds');
  });
  test('a waived difference has no voice', () => {
    const waivers = (id: string) => [
      {
        waiverId: 'w',
        revisionId: `${id}-1`,
        ruleId: 'shop-consistency',
        subject: `${id}-belly`,
        reason: 'Thick body',
        personName: 'Ada',
        grantedAt: NOW,
      },
    ];
    const waived = (id: string) => ({ ...other(id, 0.75), revisionId: `${id}-1`, waivers: waivers(id) });
    expect(found('shop-consistency', popper(), { of: of(waived('a'), waived('b'), other('c', 0.5)) })?.verdict).toBe(
      'holds',
    );
  });
  test('habits do not depend on the order of models', () => {
    const models = [other('a', 0.75), other('b', 0.5), other('c', 0.75), popper()];
    const ways = (list: readonly SpecModel[]) =>
      wireHabits(list).map(({ ways: all }) => all.map(({ way }) => way.embedmentMm));
    expect(ways(models)).toEqual(ways([...models].reverse()));
  });
});

test('a hook keeps its figures in the finding', () => {
  expect(figure(found('weakest-link', popper()), 'The hook carries')).toBe(HOOK.sheet?.statedStrengthN);
});
