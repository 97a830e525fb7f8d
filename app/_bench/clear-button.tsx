'use client';

import { useState } from 'react';
import { ActionDialog, BenchForm, type ReadyAction } from './action-dialog';
import type { BatchRef } from './bench-context';
import { PiecePicker } from './piece-picker';
import { TypedField } from './typed-field';

export interface ClearButtonProps {
  readonly batch: BatchRef;
  readonly mixId: string;
  readonly mixNumber: number;
  /** Still held. */
  readonly pieces: readonly number[];
}

/** Sets held pieces free, each tested or redone. Scrapped ones are free of themselves. */
export function ClearButton(props: ClearButtonProps) {
  return (
    <ActionDialog label="Tested or redone" title={`Pieces held for mix ${props.mixNumber}`}>
      {(close) => <ClearForm {...props} onSent={close} />}
    </ActionDialog>
  );
}

function ClearForm({ batch, mixId, mixNumber, pieces, onSent }: ClearButtonProps & { readonly onSent: () => void }) {
  const [picked, setPicked] = useState<ReadonlySet<number>>(new Set());
  const [how, setHow] = useState<'tested' | 'redone'>('tested');
  const [note, setNote] = useState('');
  const [isTried, setTried] = useState(false);

  function ready(): ReadyAction | null {
    setTried(true);
    const numbers = [...picked].sort((a, b) => a - b);
    if (numbers.length === 0) return null;
    return {
      label: `${numbers.length === 1 ? '1 piece' : `${numbers.length} pieces`} of mix ${mixNumber} ${how}`,
      at: null,
      action: { kind: 'pieces-cleared', mixId, pieces: numbers, how, note: note.trim() },
    };
  }

  return (
    <BenchForm batch={batch} submitLabel="Set free" ready={ready} onSent={onSent}>
      <p className="text-ink-soft">
        Tested means every joint of this mix in the piece held a proof load, not its peak. A piece that was pulled to
        its peak is damaged: scrap it.
      </p>
      <PiecePicker
        legend="Which pieces"
        pieces={pieces.map((number) => ({ number }))}
        picked={picked}
        onPick={setPicked}
        error={isTried && picked.size === 0 ? 'Pick at least one piece.' : undefined}
      />
      <fieldset className="flex flex-wrap gap-2">
        <legend className="mb-1.5 font-semibold">What was done</legend>
        {(['tested', 'redone'] as const).map((value) => (
          <button
            key={value}
            type="button"
            aria-pressed={how === value}
            onClick={() => setHow(value)}
            className="min-h-touch rounded-sheet border-2 border-line-strong bg-sheet px-3 aria-pressed:border-ink aria-pressed:font-semibold"
          >
            {value === 'tested' ? 'Each tested' : 'Joints redone'}
          </button>
        ))}
      </fieldset>
      <TypedField label="Note" value={note} onChange={setNote} error={undefined} />
    </BenchForm>
  );
}
