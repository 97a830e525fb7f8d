import type { JudgedPull } from '@/lib/pulltest/judge-pulls';
import type { ForceUnit } from '@/lib/units/unit-choice';
import type { PullSeries } from '@/prisma/data/pull-series';
import { countsAsText, loadText, marksText } from './pull-use-text';

export interface SavedPullProps {
  readonly series: PullSeries;
  readonly judged: readonly JudgedPull[];
  /** Of the address; anything else than a pull of this series says nothing. */
  readonly pullId: string;
  readonly unit: ForceUnit;
}

/** That the last pull is written down, as what, and what it counts as. */
export function SavedPull({ series, judged, pullId, unit }: SavedPullProps) {
  const pull = judged.find(({ record }) => record.id === pullId);
  if (pull === undefined) return null;
  const code = series.specimens.find(({ id }) => id === pull.record.specimenId)?.code ?? '';
  const marks = marksText(pull);
  return (
    <p role="status" className="border-l-4 border-ink bg-well px-4 py-3 font-medium">
      <span aria-hidden="true">✓ </span>
      {code}: {loadText(pull, unit)} is written down, and {countsAsText(pull)}
      {marks === '' ? '' : ` (${marks})`}.
    </p>
  );
}
