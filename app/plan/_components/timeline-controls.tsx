'use client';

import { buttonClass } from '@/app/_ui/button-class';
import { ROW_KINDS, type RowKind } from './timeline-rows';

const ROW_WORDS: { readonly [K in RowKind]: string } = { batches: 'Batches', people: 'People', places: 'Places' };

export interface TimelineControlsProps {
  readonly kind: RowKind;
  readonly onKind: (kind: RowKind) => void;
  /** Moves what is in view by a part of its span. */
  readonly onPan: (part: number) => void;
  readonly onNow: () => void;
  /** Wider (1) or closer (-1). */
  readonly onZoom: (by: 1 | -1) => void;
}

/** What the rows are, and what is in view. */
export function TimelineControls({ kind, onKind, onPan, onNow, onZoom }: TimelineControlsProps) {
  return (
    <div className="flex flex-wrap items-center gap-2">
      <fieldset className="flex flex-wrap gap-1">
        <legend className="sr-only">Rows</legend>
        {ROW_KINDS.map((one) => (
          <button
            key={one}
            type="button"
            aria-pressed={one === kind}
            className={buttonClass(one === kind ? 'primary' : 'plain')}
            onClick={() => onKind(one)}
          >
            {ROW_WORDS[one]}
          </button>
        ))}
      </fieldset>
      <div className="ml-auto flex flex-wrap gap-1">
        <StepButton label="Earlier" text="←" onPress={() => onPan(-0.5)} />
        <button type="button" className={buttonClass('plain')} onClick={onNow}>
          Now
        </button>
        <StepButton label="Later" text="→" onPress={() => onPan(0.5)} />
        <StepButton label="Closer" text="+" onPress={() => onZoom(-1)} />
        <StepButton label="Wider" text="−" onPress={() => onZoom(1)} />
      </div>
    </div>
  );
}

interface StepButtonProps {
  readonly label: string;
  readonly text: string;
  readonly onPress: () => void;
}

function StepButton({ label, text, onPress }: StepButtonProps) {
  return (
    <button type="button" aria-label={label} className={buttonClass('plain')} onClick={onPress}>
      {text}
    </button>
  );
}
