import { StatusMark } from '@/app/_ui/status-mark';
import type { FindingChange, Standing } from '@/lib/spec/finding-changes';
import { wordsText } from '@/lib/units/quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { ruleTitle } from './rule-title';

export interface FindingChangesProps {
  readonly changes: readonly FindingChange[];
  readonly units: UnitChoice;
}

/** What is found otherwise than before: from, to, and what is found now. */
export function FindingChanges({ changes, units }: FindingChangesProps) {
  return (
    <ul className="grid">
      {changes.map(({ ruleId, subjectName, before, after, words }) => (
        <li
          key={`${ruleId} ${subjectName}`}
          className="grid gap-x-6 gap-y-1 border-b border-line py-2 sm:grid-cols-[16rem_1fr]"
        >
          <span className="flex flex-wrap items-baseline gap-x-2">
            <Mark standing={before} />
            <span aria-hidden="true">→</span>
            <span className="sr-only">is now</span>
            <Mark standing={after} />
          </span>
          <p>
            <strong>{subjectName}</strong>: {ruleTitle(ruleId)}.{' '}
            <span className="text-ink-soft">{wordsText(words, units)}</span>
          </p>
        </li>
      ))}
    </ul>
  );
}

function Mark({ standing }: { readonly standing: Standing | null }) {
  return standing === null ? <span className="text-ink-soft">not asked</span> : <StatusMark status={standing} />;
}
