import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { pullCsv } from '@/lib/exchange/pull-csv';
import { type PullFileAnswers, readPullFile } from '@/lib/exchange/pull-file';
import { readPullMode } from '@/lib/exchange/pull-mode-words';
import { PULL_ROW_REFUSALS, type PullRow, pullRowRefusalText } from '@/lib/exchange/pull-row';
import { modeText, PULL_MODES } from '@/lib/pulltest/pull-mode';
import { inches, poundsForce } from '@/lib/units/force-and-length';

const read = (text: string, answers: PullFileAnswers = {}) =>
  readPullFile(new TextEncoder().encode(text), 'Europe/London', answers);

function rowsOf(text: string, answers: PullFileAnswers = {}): readonly PullRow[] {
  const result = read(text, answers);
  if (result.state !== 'read') throw new Error(`${result.state} ${JSON.stringify(result)}`);
  return result.rows;
}

describe('a file of pull readings', () => {
  test('headings in any order and wording, units in them, bounds by sign, column or plus', () => {
    const rows = rowsOf(
      [
        'Shop sheet of 3 March',
        'How it ended;Peak load (lbf);Mix;Coupon;Depth (in);At least;Note',
        'wood came with it;62;A;A-1;1/4;;"said ""crack"" first"',
        'wire snapped;> 95;A;A-2;3/8;;',
        'stopped;150+;B;B-2;.5;;',
        'Slid out clean;121,5 lbf;B;B-3;12.7 mm;yes;',
      ].join('\r\n'),
    );
    expect(rows).toMatchObject([
      { line: 3, specimen: 'A-1', mix: 'A', mode: 'wood-sleeve', isLowerBound: false, note: 'said "crack" first' },
      { line: 4, mode: 'wire-broke', isLowerBound: true },
      { line: 5, mode: 'held', isLowerBound: true },
      { line: 6, mode: 'slid-out', isLowerBound: true },
    ]);
    expect(rows[0]?.loadN).toBeCloseTo(poundsForce(62), 9);
    expect(rows[1]?.embedmentMm).toBeCloseTo(inches(3 / 8), 9);
    expect(rows[3]?.loadN).toBeCloseTo(poundsForce(121.5), 9);
    expect(rows[3]?.embedmentMm).toBe(12.7);
  });

  test('an inch mark is no quote', () => {
    const rows = rowsOf('Mix,Depth,Load\nA,1/2",62 lbf\nA,"3/4""",70 lbf\nB, 1 1/4" ,80 lb\n');
    expect(rows.map(({ embedmentMm }) => embedmentMm)).toEqual(
      [0.5, 0.75, 1.25].map((depth) => expect.closeTo(inches(depth), 9)),
    );
  });

  test('every line is read, refused with its reason, blank, or a repeat', () => {
    const result = read(
      [
        'Specimen,Depth (mm),Load (N),Failure,Angle,Time stamp',
        'A-1,6,275,split,,',
        'A-1,6,275,split,,',
        ',6,275,split,,',
        'A-2,6,strong,split,,',
        'A-3,deep,275,split,,',
        'A-4,6,275,vanished,,',
        'A-5,6,275,split,120,',
        'A-6,6,275,split,0,yesterday',
        'A-7,6,27,5,split,0,2026-03-01 10:00',
        'A-8,6,"275,split,,',
        ' , ,,,,',
        'A-9,6,,,,',
      ].join('\n'),
    );
    if (result.state !== 'read') throw new Error(result.state);
    expect(result.refused.map(({ line, reason }) => [line, reason])).toEqual([
      [4, 'no-specimen'],
      [5, 'bad-load'],
      [6, 'bad-depth'],
      [7, 'bad-mode'],
      [8, 'bad-angle'],
      [9, 'bad-time'],
      [10, 'too-many-fields'],
      [11, 'open-quote'],
    ]);
    expect(result).toMatchObject({ repeatedLines: [3], blankLines: 1 });
    expect(result.rows.map(({ specimen, loadN }) => [specimen, loadN])).toEqual([
      ['A-1', 275],
      ['A-9', null],
    ]);
    expect(new Set(PULL_ROW_REFUSALS.map(pullRowRefusalText)).size).toBe(PULL_ROW_REFUSALS.length);
  });

  test('what it does not say is asked, and the answer decides: 62 may be pounds or newtons', () => {
    const text = 'Specimen,Depth,Load,Date\nA-1,.5,62,03/04/2026\n';
    expect(read(text)).toMatchObject({
      state: 'asks',
      questions: [
        { kind: 'load-unit', example: '62' },
        { kind: 'depth-unit', example: '.5' },
        { kind: 'day-order', example: '03/04/2026' },
      ],
    });
    const answers = { loadUnit: 'lbf', depthUnit: 'in', dayOrder: 'month-first' } as const;
    const [row] = rowsOf(text, answers);
    expect(row?.loadN).toBeCloseTo(poundsForce(62), 9);
    expect(row?.pulledAt).toBe(Date.UTC(2026, 2, 4));
    expect(rowsOf(text, { ...answers, dayOrder: 'day-first' })[0]?.pulledAt).toBe(Date.UTC(2026, 3, 2, 23));
    expect(read('Specimen,Load (stone)\nA-1,62\n')).toMatchObject({
      state: 'asks',
      questions: [{ kind: 'load-unit' }],
    });
  });

  test("times are the shop's wall clock unless they name their offset", () => {
    const rows = rowsOf('Specimen,Load (N),Pulled at\nA-1,10,2026-07-01 10:00\nA-2,10,2026-07-01T10:00Z\nA-3,10,\n');
    expect(rows.map(({ pulledAt }) => pulledAt)).toEqual([Date.UTC(2026, 6, 1, 9), Date.UTC(2026, 6, 1, 10), null]);
  });

  test('UTF-16, Windows-1252 and tabs', () => {
    const text = 'Probe\tKraft (N)\tNotiz\nA-1\t275,5\tgerissen \u00fcber der \u00d6se\n';
    const utf16 = new Uint8Array([
      0xff,
      0xfe,
      ...[...text].flatMap((c) => [c.charCodeAt(0) & 255, c.charCodeAt(0) >> 8]),
    ]);
    const latin = new Uint8Array([...text].map((c) => c.charCodeAt(0)));
    for (const bytes of [utf16, latin]) {
      const result = readPullFile(bytes, 'UTC');
      expect(result).toMatchObject({
        state: 'read',
        rows: [{ loadN: 275.5, note: 'gerissen \u00fcber der \u00d6se' }],
      });
    }
  });

  test.each([
    ['', 'empty'],
    ['\n\n', 'empty'],
    ['a,b\n1,2\n', 'no-headings'],
    ['Specimen,Load (N)\n\n', 'no-rows'],
  ])('%j is unreadable: %s', (text, code) => {
    expect(read(text)).toMatchObject({ state: 'unreadable', code });
  });

  test('a huge file is refused before it is read', () => {
    expect(readPullFile(new Uint8Array(4_000_001), 'UTC')).toMatchObject({ state: 'unreadable', code: 'too-long' });
  });

  test('any bytes end in a result without NaN', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 200 }), fc.uint8Array({ maxLength: 60 }), (text, bytes) => {
        for (const input of [new TextEncoder().encode(`Specimen,Depth (in),Load (lbf),Mode,Angle\n${text}`), bytes]) {
          const result = readPullFile(input, 'UTC');
          if (result.state === 'read') expect(JSON.stringify(result.rows)).not.toMatch(/NaN|Infinity/);
        }
      }),
    );
  });
});

test('modes by code, by the words of the card, and as makers write', () => {
  for (const mode of PULL_MODES) {
    expect(readPullMode(mode)).toBe(mode);
    expect(readPullMode(modeText(mode).toUpperCase())).toBe(mode);
  }
  expect(readPullMode('jig let go')).toBe('jig-failed');
  expect(readPullMode('cracked the top')).toBe('split');
  expect(readPullMode('')).toBeNull();
  expect(readPullMode('no idea')).toBeNull();
});

test('written readings are read back the same, formulas defused, in either unit', () => {
  const word = fc.string({ maxLength: 12 }).map((text) => text.trim());
  const row = fc.record({
    specimen: fc.constantFrom('A-1', 'B-2', '=SUM(A1)', '"x", y'),
    mix: fc.constantFrom(null, 'A', 'B'),
    condition: fc.constantFrom(null, 'poplar'),
    embedmentMm: fc.oneof(fc.constant(null), fc.integer({ min: 1, max: 40 })),
    loadN: fc.oneof(fc.constant(null), fc.integer({ min: 0, max: 5000 })),
    isLowerBound: fc.boolean(),
    mode: fc.constantFrom(null, ...PULL_MODES),
    angleDeg: fc.constantFrom(null, 0, 45, 90),
    pulledAt: fc.oneof(fc.constant(null), fc.integer({ min: Date.UTC(2001, 0), max: Date.UTC(2060, 0) })),
    note: word,
  });
  fc.assert(
    fc.property(
      fc.array(row, { minLength: 1, maxLength: 6 }),
      fc.constantFrom('mm', 'inch'),
      fc.constantFrom('N', 'lbf'),
      (made, length, force) => {
        const rows = made.map((one, i): PullRow => ({ ...one, line: i + 2 }));
        const result = read(pullCsv(rows, length, force));
        if (result.state !== 'read') throw new Error(result.state);
        expect(result.refused).toEqual([]);
        const kept = rows.filter(({ line }) => !result.repeatedLines.includes(line));
        expect(result.rows).toHaveLength(kept.length);
        for (const [i, back] of result.rows.entries()) {
          const one = kept[i];
          expect({ ...back, embedmentMm: 0, loadN: 0, line: 0 }).toEqual({ ...one, embedmentMm: 0, loadN: 0, line: 0 });
          if (one?.embedmentMm != null) expect(back.embedmentMm).toBeCloseTo(one.embedmentMm, 4);
          if (one?.loadN != null) expect(back.loadN).toBeCloseTo(one.loadN, 4);
        }
      },
    ),
  );
  expect(
    pullCsv(
      [
        {
          line: 2,
          specimen: 'A',
          mix: null,
          condition: null,
          embedmentMm: null,
          loadN: null,
          isLowerBound: false,
          mode: null,
          angleDeg: null,
          pulledAt: null,
          note: '=1+1',
        },
      ],
      'mm',
      'N',
    ),
  ).toContain("'=1+1");
});
