import { StatusMark } from '@/app/_ui/status-mark';
import { STANDINGS, tallyText } from '@/app/models/_components/finding-status';
import { ruleTitle } from '@/app/models/_components/rule-title';
import type { Finding } from '@/lib/spec/finding';
import { standingOf } from '@/lib/spec/finding-changes';
import { INPUT_WORDS } from '@/lib/spec/input-name';
import { wordsText } from '@/lib/units/quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface VerdictsProps {
  readonly findings: readonly Finding[];
  readonly units: UnitChoice;
}

/** What is found of the spec as it stands in the drawing, in short: what needs a hand first, what holds folded away. */
export function Verdicts({ findings, units }: VerdictsProps) {
  const of = (status: (typeof STANDINGS)[number]) => findings.filter((one) => standingOf(one) === status);
  return (
    <div className="grid gap-3">
      <p aria-live="polite" className="font-semibold">
        {tallyText(findings)}
      </p>
      {STANDINGS.map((status) => {
        const members = of(status);
        if (members.length === 0) return null;
        if (status === 'short') return <Lines key={status} findings={members} units={units} />;
        return (
          <details key={status}>
            <summary className="inline-flex min-h-touch items-center gap-2 underline decoration-line-strong underline-offset-4">
              <StatusMark status={status} /> {members.length}
            </summary>
            <Lines findings={members} units={units} />
          </details>
        );
      })}
    </div>
  );
}

function Lines({ findings, units }: VerdictsProps) {
  return (
    <ul className="grid gap-2">
      {findings.map((finding) => (
        <li key={`${finding.ruleId} ${finding.subject.key}`} className="grid gap-x-3 sm:grid-cols-[7rem_1fr]">
          <StatusMark status={standingOf(finding)} />
          <span>
            <strong>{finding.subject.name}</strong>: {ruleTitle(finding.ruleId)}. {wordsText(finding.words, units)}
            {finding.missing.length > 0 && ` Missing: ${finding.missing.map((name) => INPUT_WORDS[name]).join(', ')}.`}
          </span>
        </li>
      ))}
    </ul>
  );
}
