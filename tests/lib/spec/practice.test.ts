import { describe, expect, test } from 'vitest';
import { bodyShape } from '@/lib/geometry/body-shapes';
import { applyFix } from '@/lib/spec/apply-fix';
import { findingsOf } from '@/lib/spec/findings-of';
import type { SpecWaiver } from '@/lib/spec/spec-model';
import { inches } from '@/lib/units/force-and-length';
import { wordsText } from '@/lib/units/quantity';
import { context, found, line, NOW, popper, withBelly, woodOf } from './models';

const INCHES = { lengthUnit: 'inch', forceUnit: 'lbf', massUnit: 'oz', temperatureUnit: 'F' } as const;
const said = (finding: ReturnType<typeof found>) => wordsText(finding?.words ?? [], INCHES);

// Common practice, no source: .041 in wire twisted, 5/64 in hole, slow epoxy, half an inch deep.
describe('half an inch in yellow-poplar', () => {
  test.each([
    ['an ordinary bass line', line(17), 'holds'],
    ['a heavy saltwater line', line(80, 'braid'), 'short'],
  ] as const)('%s', (what, of, verdict) => {
    const finding = found('strength-demand', popper({ line: of }), { subject: 'tie' });
    console.log(`${what}: ${said(finding)}`);
    expect(finding?.verdict).toBe(verdict);
  });
});

test('balsa is sent to a wire that runs through, by its density and not its name', () => {
  const balsa = popper({ wood: woodOf('balsa') });
  const finding = found('through-wire', balsa);
  console.log(`balsa: ${said(finding)}`);
  expect(finding?.verdict).toBe('short');
  expect(finding?.fixes.map(({ way }) => way)).toEqual(['through']);
  expect(found('strength-demand', balsa)?.fixes.map(({ way }) => way)).not.toContain('deeper');
  const dense = found('through-wire', popper({ wood: { ...woodOf('balsa'), weighedDensityKgM3: 300 } }));
  expect(dense?.verdict).toBe('holds');
});

test('1 1/4 in close under the skin is weaker than 1/2 in square, and says why', () => {
  const body = { stations: bodyShape('jerkbait', { lengthMm: 150, heightMm: 44, widthMm: 30 }), lengthMm: 150 };
  const slanted = withBelly(
    { xMm: 60, slantDeg: 80, embedmentMm: inches(5 / 4), drillDepthMm: inches(5 / 4) },
    { body, line: line(40) },
  );
  const finding = found('strength-demand', slanted);
  console.log(`slanted: ${said(finding)}`);
  expect(finding?.verdict).toBe('short');
  expect(said(finding)).toContain('Thin cover takes');
  expect(said(finding)).toContain('square in solid wood would carry');
  expect(finding?.fixes.map(({ way }) => way)).toContain('square');
});

test('the first fix of a short holds, and the model given stays as it was', () => {
  const model = popper({ line: line(80, 'braid') });
  const before = JSON.stringify(model);
  const fix = found('strength-demand', model)?.fixes[0];
  if (fix === undefined) throw new Error('no fix');
  expect(found('strength-demand', applyFix(model, fix))?.verdict).toBe('holds');
  expect(JSON.stringify(model)).toBe(before);
});

describe('waivers', () => {
  const shallow = { embedmentMm: 10, drillDepthMm: 10 };
  const waiver: SpecWaiver = {
    waiverId: 'w1',
    revisionId: 'popper-a',
    ruleId: 'least-embedment',
    subject: 'belly',
    reason: 'Pulled five of them',
    personName: 'Ada',
    grantedAt: NOW,
  };
  const waived = (more: Partial<SpecWaiver>, revisionId = 'popper-a') =>
    found('least-embedment', withBelly(shallow, { revisionId, waivers: [{ ...waiver, ...more }] }))?.waiver ?? null;
  test('accepts the short of this revision, rule and subject', () =>
    expect(waived({})).toMatchObject({ waiverId: 'w1' }));
  test('lapses on the next revision', () => expect(waived({}, 'popper-b')).toBeNull());
  test.each([
    ['of another subject', { subject: 'tail' }],
    ['of another rule', { ruleId: 'cover' }],
    ['without a reason', { reason: '  ' }],
    ['without a name', { personName: '' }],
    ['without a date', { grantedAt: Number.NaN }],
  ])('%s is none', (_, more) => expect(waived(more)).toBeNull());
  test('a short that was waived is still short', () => {
    const findings = findingsOf(withBelly(shallow, { waivers: [waiver] }), context());
    expect(findings.find(({ waiver: of }) => of !== null)?.verdict).toBe('short');
  });
});
