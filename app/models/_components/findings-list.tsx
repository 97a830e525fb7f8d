import type { ReactNode } from 'react';
import { StatusMark } from '@/app/_ui/status-mark';
import type { Finding } from '@/lib/spec/finding';
import { standingOf } from '@/lib/spec/finding-changes';
import { INPUT_WORDS } from '@/lib/spec/input-name';
import { wordsText } from '@/lib/units/quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { STANDINGS } from './finding-status';
import { FindingWhy } from './finding-why';
import { ruleTitle } from './rule-title';

export interface FindingsListProps {
  readonly findings: readonly Finding[];
  readonly units: UnitChoice;
  /** What can be done about one: to waive it, to take a waiver back. */
  readonly actionsOf?: (finding: Finding) => ReactNode;
}

/** What the rules found, what needs a hand first: holds, short or not judged by word and shape, and why. */
export function FindingsList({ findings, units, actionsOf }: FindingsListProps) {
  const groups = STANDINGS.map((status) => ({
    status,
    members: findings.filter((finding) => standingOf(finding) === status),
  })).filter(({ members }) => members.length > 0);
  return (
    <div className="grid gap-4">
      {groups.map(({ status, members }) =>
        status === 'holds' ? (
          <details key={status}>
            <summary className="inline-flex min-h-touch cursor-pointer items-center gap-3 font-semibold underline decoration-line-strong underline-offset-4">
              {members.length} {members.length === 1 ? 'holds' : 'hold'}
            </summary>
            <Group findings={members} units={units} actionsOf={actionsOf} />
          </details>
        ) : (
          <Group key={status} findings={members} units={units} actionsOf={actionsOf} />
        ),
      )}
    </div>
  );
}

interface GroupProps {
  readonly findings: readonly Finding[];
  readonly units: UnitChoice;
  readonly actionsOf: FindingsListProps['actionsOf'];
}

function Group({ findings, units, actionsOf }: GroupProps) {
  return (
    <ul className="grid">
      {findings.map((finding) => (
        <li
          key={`${finding.ruleId} ${finding.subject.key}`}
          className="grid gap-x-6 gap-y-1 border-b border-line py-3 sm:grid-cols-[9rem_1fr_auto]"
        >
          <StatusMark status={standingOf(finding)} />
          <FindingText finding={finding} units={units} />
          <div className="flex flex-wrap items-start gap-2">{actionsOf?.(finding)}</div>
        </li>
      ))}
    </ul>
  );
}

function FindingText({ finding, units }: { readonly finding: Finding; readonly units: UnitChoice }) {
  const { subject, words, missing, cautions, advice, waiver } = finding;
  return (
    <div className="grid min-w-0 gap-1">
      <p>
        <strong>{subject.name}</strong>: {ruleTitle(finding.ruleId)}.{' '}
        <span className="text-ink-soft">{wordsText(words, units)}</span>
      </p>
      {missing.length > 0 && <p>Missing: {missing.map((name) => INPUT_WORDS[name]).join('; ')}.</p>}
      {advice !== null && finding.verdict !== 'holds' && <p>{wordsText(advice, units)}</p>}
      {waiver !== null && (
        <p>
          Accepted by {waiver.personName}: “{waiver.reason}”
        </p>
      )}
      {cautions.map((caution) => (
        <p key={wordsText(caution, units)} className="text-sm">
          <strong>Mind:</strong> {wordsText(caution, units)}
        </p>
      ))}
      <FindingWhy finding={finding} units={units} />
    </div>
  );
}
