'use client';

import { buttonClass } from '@/app/_ui/button-class';
import { ruleTitle } from '@/app/models/_components/rule-title';
import type { Finding } from '@/lib/spec/finding';
import { isOpenShort } from '@/lib/spec/finding';
import type { SpecFix } from '@/lib/spec/spec-fix';
import { quantityText, wordsText } from '@/lib/units/quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

export interface FixListProps {
  readonly findings: readonly Finding[];
  readonly units: UnitChoice;
  readonly onApply: (fix: SpecFix) => void;
}

/** What would make each short hold, the least change first; a button tries it out in the drawing. */
export function FixList({ findings, units, onApply }: FixListProps) {
  const shorts = findings.filter(isOpenShort);
  if (shorts.length === 0) return <p>Nothing is short that was not accepted.</p>;
  return (
    <ul className="grid gap-4">
      {shorts.map((finding) => (
        <li key={`${finding.ruleId} ${finding.subject.key}`} className="grid gap-2 border-l-4 border-accent pl-3">
          <p>
            <strong>{finding.subject.name}</strong>: {ruleTitle(finding.ruleId)}. {wordsText(finding.words, units)}
          </p>
          {finding.fixes.length === 0 && finding.advice !== null && (
            <p className="text-ink-soft">{wordsText(finding.advice, units)}</p>
          )}
          {finding.fixes.length > 0 && (
            <ol className="grid gap-2">
              {finding.fixes.map((fix) => (
                <li
                  key={wordsText(fix.words, units)}
                  className="flex flex-wrap items-center justify-between gap-x-4 gap-y-1"
                >
                  <span>
                    {wordsText(fix.words, units)}
                    {fix.carries !== null && (
                      <span className="text-ink-soft"> It then carries {quantityText(fix.carries, units)}.</span>
                    )}
                  </span>
                  <button
                    type="button"
                    className={buttonClass('plain')}
                    aria-label={`Try: ${wordsText(fix.words, units)}`}
                    onClick={() => onApply(fix)}
                  >
                    Try this
                  </button>
                </li>
              ))}
            </ol>
          )}
        </li>
      ))}
    </ul>
  );
}
