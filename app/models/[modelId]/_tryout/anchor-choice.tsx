'use client';

import { StatusMark } from '@/app/_ui/status-mark';
import { STANDINGS } from '@/app/models/_components/finding-status';
import type { Finding } from '@/lib/spec/finding';
import { type Standing, standingOf } from '@/lib/spec/finding-changes';
import type { SpecAnchor } from '@/lib/spec/spec-model';

export interface AnchorChoiceProps {
  readonly anchors: readonly SpecAnchor[];
  readonly findings: readonly Finding[];
  readonly selectedId: string;
  readonly onSelect: (anchorId: string) => void;
}

/** The anchors as buttons, each with the worst that is found of it. */
export function AnchorChoice({ anchors, findings, selectedId, onSelect }: AnchorChoiceProps) {
  return (
    <fieldset className="flex flex-wrap gap-2">
      <legend className="sr-only">Anchor to try</legend>
      {anchors.map(({ anchorId, name }) => (
        <button
          key={anchorId}
          type="button"
          aria-pressed={anchorId === selectedId}
          onClick={() => onSelect(anchorId)}
          className="inline-flex min-h-touch items-center gap-2.5 rounded-sheet border-2 border-line-strong bg-sheet px-3 py-1.5 hover:border-ink aria-pressed:border-ink aria-pressed:bg-well aria-pressed:font-semibold"
        >
          {name}
          <StatusMark status={worst(findings, anchorId)} />
        </button>
      ))}
    </fieldset>
  );
}

/** What needs a hand most of what is found of an anchor. */
function worst(findings: readonly Finding[], anchorId: string): Standing {
  const own = findings.filter(({ subject }) => subject.key === anchorId).map(standingOf);
  return STANDINGS.find((status) => own.includes(status)) ?? 'not-judged';
}
