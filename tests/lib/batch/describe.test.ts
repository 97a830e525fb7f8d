import { describe, expect, it } from 'vitest';
import { ANOMALY_CODES } from '@/lib/batch/anomaly';
import type { BatchWords } from '@/lib/batch/batch-words';
import { countText, listText, pieceRanges } from '@/lib/batch/batch-words';
import { UNJUDGED_CODES } from '@/lib/batch/cure-reader';
import type { Refusal } from '@/lib/batch/decision';
import { anomalyText, conflictText, eventText } from '@/lib/batch/describe-event';
import { refusalText, warningText } from '@/lib/batch/describe-refusal';
import { bandText, statusText, unjudgedText, urgencyText } from '@/lib/batch/describe-status';
import type { BatchEventBody } from '@/lib/batch/events';
import { clockText } from '@/lib/units/format-instant';
import { coat, hoursOn, joints, mix, work } from './workshop';

const NAMES: { readonly [id: string]: string } = {
  paint: 'Paint',
  'coat-2': 'Second coat',
  'coat-1': 'First coat',
  set: 'Set anchors',
  sand: 'Sand',
  tie: 'line tie',
  belly: 'belly hanger',
};
const WORDS: BatchWords = {
  operation: (id) => NAMES[id] ?? id,
  anchor: (id) => NAMES[id] ?? id,
  mix: (id) => `mix ${id.slice(1)}`,
  time: (at) => clockText(at, 'America/Chicago'),
  mass: (massG) => `${massG} g`,
  temperature: (temperatureC) => `${temperatureC} °C`,
};
const band = { earliestAt: hoursOn(0.5), centralAt: hoursOn(1), latestAt: hoursOn(3 + 1 / 6) };

describe('pieces in words', () => {
  it.each<[readonly number[], string]>([
    [[], ''],
    [[3], '3'],
    [[1, 2], '1, 2'],
    [[1, 2, 3, 4, 7], '1-4, 7'],
    [[1, 3, 5, 7, 9, 11, 13, 15, 17, 19], '1, 3, 5, 7, 9, 11, 13, 15 and 2 more'],
  ])('%j is %s', (numbers, text) => {
    expect(pieceRanges(numbers)).toBe(text);
  });

  it('counts and lists', () => {
    expect([countText(1, 'joint'), countText(3, 'joint')]).toEqual(['1 joint', '3 joints']);
    expect([listText([]), listText(['a']), listText(['a', 'b', 'c'])]).toEqual(['', 'a', 'a, b and c']);
  });
});

describe('events in words', () => {
  it.each<[BatchEventBody, string]>([
    [{ kind: 'batch-opened', quantity: 24 }, 'Batch opened with 24 pieces'],
    [work('sand', 3, 1, 2), 'Sand: done on pieces 1-3'],
    [mix('m2', 'set', 2), 'Mix 2 started for Set anchors: 9 g of Slow epoxy at 22 °C'],
    [joints('m1', 1, 2), 'Mix 1: 4 joints set on pieces 1, 2 (line tie and belly hanger)'],
    [coat('m3', 4), 'Mix 3: applied to piece 4'],
    [{ kind: 'mix-closed', mixId: 'm1' }, 'Mix 1 closed'],
    [
      { kind: 'window-remedied', operationId: 'coat-1', pieces: [1] },
      'First coat: closed recoat window made good on piece 1',
    ],
    [{ kind: 'pieces-scrapped', pieces: [7], reason: 'split' }, 'Piece 7 scrapped: split'],
    [{ kind: 'noted', text: 'cold hands', pieces: [] }, 'Note: cold hands'],
    [{ kind: 'noted', text: 'run', pieces: [2] }, 'Note on piece 2: run'],
    [{ kind: 'corrected', seq: 4, reason: 'slip', replacement: null }, 'Entry 4 taken back: slip'],
    [
      { kind: 'corrected', seq: 4, reason: 'slip', replacement: { at: hoursOn(1), body: work('sand', 1) } },
      'Entry 4 corrected: slip. Instead: Sand: done on piece 1 (19:00)',
    ],
    [{ kind: 'batch-finished' }, 'Batch finished'],
    [{ kind: 'batch-reopened' }, 'Batch reopened'],
  ])('%o', (body, text) => {
    expect(eventText(body, WORDS)).toBe(text);
  });

  it('says what somebody else just did', () => {
    const conflict = { seq: 8, personId: 'ben', at: hoursOn(1), recordedAt: hoursOn(1), body: work('sand', 1) };
    expect(conflictText(conflict, 'Ben', WORDS)).toBe(
      'Someone else just changed this. Ben at 19:00: Sand: done on piece 1',
    );
  });

  it('has words for every anomaly and every reason not to judge', () => {
    const texts = ANOMALY_CODES.map((code) => anomalyText({ seq: 1, code, applied: false, pieces: [2], count: 1 }));
    expect(new Set(texts).size).toBe(ANOMALY_CODES.length);
    expect(texts[0]).toBe('Not counted: this kind of entry is not known (piece 2)');
    expect(new Set(UNJUDGED_CODES.map(unjudgedText)).size).toBe(UNJUDGED_CODES.length);
  });
});

describe('refusals in words', () => {
  const two = { pieces: [3, 7], otherPieces: [] };
  const waiting = { operationId: 'coat-2', milestone: 'paint', mixIds: ['m1'], band } as const;
  it.each<[Refusal, string]>([
    [
      { code: 'not-yet', operationId: 'paint', ...two, groups: [{ pieces: [3, 7], waiting }] },
      '2 pieces (3, 7) not yet at paint after Second coat: from 21:10 (about 19:00, between 18:30 and 21:10).',
    ],
    [
      {
        code: 'window-closed',
        operationId: 'coat-2',
        filmOperationId: 'coat-1',
        closedAt: hoursOn(2),
        remedy: null,
        ...two,
      },
      '2 pieces (3, 7): the recoat window of First coat closed at 20:00: wash, dry, sand first.',
    ],
    [
      { code: 'blocked', operationId: 'paint', byOperationIds: ['sand'], ...two },
      '2 pieces (3, 7) not ready for Paint: Sand first.',
    ],
    [
      { code: 'mix-closed', mixId: 'm1', closedAt: hoursOn(2), bySeq: 3 },
      'Mix 1 was closed at 20:00. Start a new mix, or give a time before that.',
    ],
    [{ code: 'mix-in-use', mixId: 'm1', bySeqs: [4, 5] }, 'Mix 1 is used by entries 4, 5. Correct those first.'],
    [
      { code: 'open-pieces', pieces: [3], otherPieces: [] },
      'Piece 3 with operations open. Do or scrap them before finishing the batch.',
    ],
  ])('%o', (refusal, text) => {
    expect(refusalText(refusal, WORDS)).toBe(text);
  });

  it('warns of a late joint and of an own judgement', () => {
    expect(warningText({ code: 'late', mixId: 'm1', lowerAt: hoursOn(1), centralAt: hoursOn(2) }, WORDS)).toBe(
      'Recorded as late: the pot life of mix 1 ran to 19:00.',
    );
    const missing = { operationId: 'coat-2', milestone: 'paint', code: 'not-on-sheet' } as const;
    expect(warningText({ code: 'not-judged', pieces: [3, 7], missing }, WORDS)).toBe(
      '2 pieces (3, 7) recorded on your own judgement: paint after Second coat cannot be judged: the data sheet entered gives no hours for it.',
    );
  });
});

describe('bands and states in words', () => {
  it('prints an estimate as one', () => {
    expect(bandText(band, WORDS)).toBe('about 19:00, between 18:30 and 21:10');
    expect(bandText({ ...band, latestAt: null }, WORDS)).toBe(
      'about 19:00, not before 18:30, with no sure end in sight at these temperatures',
    );
    expect(bandText({ earliestAt: null, centralAt: null, latestAt: null }, WORDS)).toBe(
      'not in sight at these temperatures',
    );
    const sure = { earliestAt: hoursOn(1), centralAt: hoursOn(1), latestAt: hoursOn(1) };
    expect(bandText(sure, WORDS)).toBe('19:00');
  });

  it('says what stands between', () => {
    expect(statusText({ kind: 'ready', sinceAt: 0, closesAt: hoursOn(1) }, WORDS)).toBe('can be done now, until 19:00');
    expect(statusText({ kind: 'blocked', byOperationIds: ['set', 'sand'] }, WORDS)).toBe(
      'waits for Set anchors and Sand',
    );
    expect(urgencyText({ kind: 'due', dueOn: '2026-03-01' }, WORDS, (day) => day)).toBe('due 2026-03-01');
  });
});
