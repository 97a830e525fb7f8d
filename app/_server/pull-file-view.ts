import 'server-only';
import type { PullFileLine, PullFileQuestion, PullFileView } from '@/app/pull-tests/_import/pull-file-view';
import type { PullFileReport, PullFileResult, PullQuestionAsked } from '@/lib/exchange/pull-file';
import { type IntakeRow, intakeRefusalText } from '@/lib/exchange/pull-intake';
import { type PullRow, pullRowRefusalText } from '@/lib/exchange/pull-row';
import { modeText } from '@/lib/pulltest/pull-mode';
import { forceText, lengthText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

/** A file that could not be read as far as its rows, as the browser shows it. */
export function unreadView(result: Exclude<PullFileResult, { state: 'read' }>): PullFileView {
  const { firstLines } = result;
  if (result.state === 'asks') return { state: 'asks', questions: result.questions.map(questionView), firstLines };
  return { state: 'refused', message: REFUSALS[result.code], firstLines };
}

const REFUSALS = {
  empty: 'This file is empty.',
  'no-headings':
    'No line of this file names a load and what was pulled. Give the columns headings: Specimen or Mix and Depth, Load, Failure mode.',
  'too-long': 'This file is too long for pulls. Cut it into one file a series.',
  'no-rows': 'This file has headings and no rows.',
} as const;

function questionView({ kind, example }: PullQuestionAsked): PullFileQuestion {
  switch (kind) {
    case 'load-unit':
      return { name: 'loadUnit', label: 'In which unit are the loads?', example, options: units('lbf', 'N', 'kgf') };
    case 'depth-unit':
      return { name: 'depthUnit', label: 'In which unit are the depths?', example, options: units('in', 'mm') };
    case 'day-order': {
      const options = [
        { value: 'day-first', label: 'The day comes first' },
        { value: 'month-first', label: 'The month comes first' },
      ];
      return { name: 'dayOrder', label: 'Which comes first in the dates?', example, options };
    }
  }
}

function units(...signs: readonly string[]) {
  return signs.map((sign) => ({ value: sign, label: sign }));
}

/** What the rows of a file are to the series. */
export function takenView(
  state: 'preview' | 'done',
  report: PullFileReport,
  taken: readonly IntakeRow[],
  choice: UnitChoice,
): PullFileView {
  const count = (kind: IntakeRow['kind']) => taken.filter((one) => one.kind === kind).length;
  const fresh = taken.flatMap((one) => (one.kind === 'new' ? [one] : []));
  const added = new Set(fresh.flatMap(({ specimen }) => (specimen.isNew ? [specimen.code] : [])));
  return {
    state,
    headings: report.layout.headings,
    fresh: fresh.map(({ row, specimen }) => ({
      line: row.line,
      text: `${specimen.code}, mix ${specimen.mix}, ${lengthText(specimen.depthMm, choice.lengthUnit)}`,
      words: readingText(row, choice),
    })),
    added: added.size,
    known: count('known'),
    empty: count('empty'),
    refused: [
      ...report.refused.map(({ line, text, reason }) => ({ line, text, words: pullRowRefusalText(reason) })),
      ...taken.flatMap((one): PullFileLine[] =>
        one.kind === 'refused'
          ? [{ line: one.row.line, text: one.row.specimen ?? one.row.mix ?? '', words: intakeRefusalText(one.reason) }]
          : [],
      ),
    ].sort((a, b) => a.line - b.line),
    repeated: report.repeatedLines.length,
  };
}

function readingText({ loadN, isLowerBound, mode }: PullRow, { forceUnit }: UnitChoice): string {
  const load = loadN === null ? 'no load' : `${isLowerBound ? 'at least ' : ''}${forceText(loadN, forceUnit)}`;
  return mode === null ? load : `${load}, ${modeText(mode).toLowerCase()}`;
}
