'use client';

import { useState } from 'react';
import type { CautionTopic } from '@/lib/contracts/caution-topic';
import type { Instant } from '@/lib/units/instant';
import { Caution } from '../_ui/caution';
import { ActionDialog, BenchForm, type ReadyAction } from './action-dialog';
import type { BatchRef } from './bench-context';
import { firstPieces, PiecePicker } from './piece-picker';
import { WhenField } from './when-field';

export interface WorkButtonProps {
  readonly batch: BatchRef;
  readonly operationId: string;
  readonly operationName: string;
  readonly caution: CautionTopic;
  /** Pieces that are ready for it. */
  readonly pieces: readonly number[];
  /** Records that a closed recoat window of this operation's film was made good, instead of the operation itself. */
  readonly isRemedy?: boolean;
}

/** Moves pieces on: the attended work of an operation is done on them. */
export function WorkButton(props: WorkButtonProps) {
  const { operationName, batch, isRemedy = false } = props;
  return (
    <ActionDialog
      label={isRemedy ? 'Made good' : 'Done'}
      weight="primary"
      title={`${isRemedy ? 'Window made good' : operationName}, batch ${batch.number}`}
    >
      {(close) => <WorkForm {...props} onSent={close} />}
    </ActionDialog>
  );
}

function WorkForm(props: WorkButtonProps & { readonly onSent: () => void }) {
  const { batch, operationId, operationName, caution, pieces, isRemedy = false, onSent } = props;
  const pickable = pieces.map((number) => ({ number }));
  const [picked, setPicked] = useState(firstPieces(pickable, pickable.length));
  const [at, setAt] = useState<Instant | null>(null);
  const [isTried, setTried] = useState(false);

  function ready(): ReadyAction | null {
    setTried(true);
    const numbers = pieces.filter((number) => picked.has(number));
    if (numbers.length === 0) return null;
    const count = `${numbers.length} ${numbers.length === 1 ? 'piece' : 'pieces'}`;
    return isRemedy
      ? { label: `window made good on ${count}`, at, action: { kind: 'window-remedied', operationId, pieces: numbers } }
      : { label: `${operationName} on ${count}`, at, action: { kind: 'work-done', operationId, pieces: numbers } };
  }

  return (
    <BenchForm
      batch={batch}
      submitLabel={`${isRemedy ? 'Washed and sanded' : 'Done'} on ${picked.size} ${picked.size === 1 ? 'piece' : 'pieces'}`}
      ready={ready}
      onSent={onSent}
    >
      {isRemedy && (
        <p>
          The recoat window of {operationName} has closed. Record here that the film was washed, dried and sanded dull,
          or what its data sheet asks for instead; the next coat may go on then.
        </p>
      )}
      <PiecePicker
        legend="Pieces"
        pieces={pickable}
        picked={picked}
        onPick={setPicked}
        error={isTried && picked.size === 0 ? 'Pick at least one piece.' : undefined}
      />
      <WhenField at={at} onChange={setAt} />
      <Caution topic={isRemedy ? 'dust' : caution} />
    </BenchForm>
  );
}
