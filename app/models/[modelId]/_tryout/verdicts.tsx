import type { Finding, Verdict } from '@/lib/spec/finding';
import { INPUT_WORDS } from '@/lib/spec/input-name';
import { RULES } from '@/lib/spec/rules';
import { wordsText } from '@/lib/units/quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

const VERDICT_WORDS: { readonly [V in Verdict]: string } = {
  holds: 'holds',
  short: 'short',
  'not-judged': 'not judged',
};

/** A verdict's shape and word: a full disc holds, an open notch is short, a dashed ring was not judged. */
export function VerdictShape({ verdict }: { readonly verdict: Verdict }) {
  return (
    <svg viewBox="0 0 16 16" role="img" aria-label={VERDICT_WORDS[verdict]} className="size-[0.85em] shrink-0">
      {verdict === 'holds' && <circle cx="8" cy="8" r="6.5" className="fill-ink" />}
      {verdict === 'short' && <path d="M1.5 1.5h13L8 14.5Z" className="fill-accent" />}
      {verdict === 'not-judged' && (
        <circle cx="8" cy="8" r="6" className="fill-none stroke-ink" strokeWidth="2" strokeDasharray="3 2.5" />
      )}
    </svg>
  );
}

export interface VerdictsProps {
  readonly findings: readonly Finding[];
  readonly units: UnitChoice;
}

const ORDER: readonly Verdict[] = ['short', 'not-judged', 'holds'];

/** What is found as the spec stands in the drawing: what is short first, what holds folded away. */
export function Verdicts({ findings, units }: VerdictsProps) {
  return (
    <div className="grid gap-4">
      <p aria-live="polite" className="flex flex-wrap gap-x-5 gap-y-1 font-semibold">
        {ORDER.map((verdict) => (
          <span key={verdict} className="inline-flex items-center gap-2">
            <VerdictShape verdict={verdict} />
            {findings.filter((finding) => finding.verdict === verdict).length} {VERDICT_WORDS[verdict]}
          </span>
        ))}
      </p>
      <FindingLines findings={findings.filter(({ verdict }) => verdict === 'short')} units={units} />
      <Folded title="Not judged" findings={findings.filter(({ verdict }) => verdict === 'not-judged')} units={units} />
      <Folded title="Holds" findings={findings.filter(({ verdict }) => verdict === 'holds')} units={units} />
    </div>
  );
}

function Folded({ title, ...lines }: VerdictsProps & { readonly title: string }) {
  if (lines.findings.length === 0) return null;
  return (
    <details>
      <summary className="inline-flex min-h-touch items-center font-semibold underline decoration-line-strong underline-offset-4">
        {title} ({lines.findings.length})
      </summary>
      <FindingLines {...lines} />
    </details>
  );
}

function FindingLines({ findings, units }: VerdictsProps) {
  return (
    <ul className="grid gap-2">
      {findings.map((finding) => (
        <li key={`${finding.ruleId} ${finding.subject.key}`} className="grid grid-cols-[auto_1fr] gap-x-2">
          <span className="mt-1.5">
            <VerdictShape verdict={finding.verdict} />
          </span>
          <span>
            <strong>{finding.subject.name}</strong>: {RULES.find(({ id }) => id === finding.ruleId)?.title}.{' '}
            {wordsText(finding.words, units)}
            {finding.missing.length > 0 && ` Missing: ${finding.missing.map((name) => INPUT_WORDS[name]).join(', ')}.`}
            {finding.waiver !== null && ` Accepted by ${finding.waiver.personName}: ${finding.waiver.reason}`}
          </span>
        </li>
      ))}
    </ul>
  );
}
