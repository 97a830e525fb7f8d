import type { UnitChoice } from '@/lib/units/unit-choice';
import type { Revision } from '@/prisma/data/revisions';
import { type ComparedLine, comparedLines } from './compared-lines';

export interface CompareTableProps {
  readonly from: Revision;
  readonly to: Revision;
  readonly units: UnitChoice;
}

/** Everything that is entered of two revisions, line by line. */
export function CompareTable({ from, to, units }: CompareTableProps) {
  const lines = comparedLines(from, to, units);
  const groups = [...new Set(lines.map(({ group }) => group))];
  return (
    <table className="w-full border-collapse text-left">
      <caption className="sr-only">
        Revision {from.letter} beside {to.letter}
      </caption>
      <thead>
        <tr className="border-b-2 border-line-strong text-sm text-ink-soft">
          <th scope="col" className="py-2 pr-3 font-semibold">
            What
          </th>
          <th scope="col" className="px-3 py-2 font-semibold">
            {from.letter}
          </th>
          <th scope="col" className="px-3 py-2 font-semibold">
            {to.letter}
          </th>
        </tr>
      </thead>
      {groups.map((group) => (
        <tbody key={group}>
          <tr className="border-b border-line">
            <th scope="rowgroup" colSpan={3} className="pt-4 pb-1 text-lg font-bold">
              {group}
            </th>
          </tr>
          {lines
            .filter((line) => line.group === group)
            .map((line) => (
              <Line key={line.what} line={line} />
            ))}
        </tbody>
      ))}
    </table>
  );
}

function Line({ line }: { readonly line: ComparedLine }) {
  const isChanged = line.from !== line.to;
  return (
    <tr className={`border-b border-line align-baseline ${isChanged ? 'bg-well font-semibold' : ''}`}>
      <th scope="row" className="py-1.5 pr-3 font-normal text-ink-soft">
        {line.what}
        {isChanged && <span className="font-semibold text-ink"> ≠</span>}
      </th>
      <td className="px-3 py-1.5 tabular-nums">{line.from}</td>
      <td className="px-3 py-1.5 tabular-nums">{line.to}</td>
    </tr>
  );
}
