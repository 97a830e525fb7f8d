import { type Column, Table } from '@/app/_ui/table';
import { countsAsText, loadText, marksText } from '@/app/pull-tests/_components/pull-use-text';
import type { JudgedPull } from '@/lib/pulltest/judge-pulls';
import { modeText } from '@/lib/pulltest/pull-mode';
import type { PullWords } from '@/lib/pulltest/pull-words';
import { lengthText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface ReadingTableProps {
  readonly pulls: readonly JudgedPull[];
  readonly words: PullWords;
  readonly units: UnitChoice;
}

/** Readings shown on the page; all of them are in the file. Chosen: the most specimens a plan can have. */
const SHOWN = 500;

/** Every reading, whether it counts or not. */
export function ReadingTable({ pulls, words, units }: ReadingTableProps) {
  const columns: readonly Column<JudgedPull>[] = [
    { id: 'code', title: 'Specimen', cell: ({ record }) => words.pull(record.id) },
    { id: 'mix', title: 'Mix', cell: ({ record }) => words.mix(record.mixId) },
    {
      id: 'depth',
      title: 'Depth',
      isNumber: true,
      cell: ({ record }) => lengthText(record.embedmentMm, units.lengthUnit),
    },
    { id: 'load', title: 'Load', isNumber: true, cell: (pull) => loadText(pull, units.forceUnit) },
    { id: 'mode', title: 'How it ended', cell: ({ record }) => modeText(record.mode) },
    {
      id: 'use',
      title: 'Counts',
      isLong: true,
      cell: (pull) => [countsAsText(pull), marksText(pull)].filter(Boolean).join('; '),
    },
  ];
  return (
    <div className="grid gap-2">
      <Table
        caption="Every reading"
        columns={columns}
        rows={pulls.slice(0, SHOWN)}
        rowKey={({ record }) => record.id}
      />
      {pulls.length > SHOWN && (
        <p className="text-sm text-ink-soft">
          The first {SHOWN} of {pulls.length}. The file holds all of them.
        </p>
      )}
    </div>
  );
}
