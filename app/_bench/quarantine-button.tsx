'use client';

import { useState } from 'react';
import { ActionDialog, BenchForm, type ReadyAction } from './action-dialog';
import type { BatchRef } from './bench-context';
import { TypedField } from './typed-field';

export interface QuarantineButtonProps {
  readonly batch: BatchRef;
  readonly mixId: string;
  readonly mixNumber: number;
}

/** Puts a mix in doubt: the pieces it went into are held. */
export function QuarantineButton(props: QuarantineButtonProps) {
  return (
    <ActionDialog label="Hold" title={`Hold what mix ${props.mixNumber} went into`}>
      {(close) => <QuarantineForm {...props} onSent={close} />}
    </ActionDialog>
  );
}

function QuarantineForm({ batch, mixId, mixNumber, onSent }: QuarantineButtonProps & { readonly onSent: () => void }) {
  const [reason, setReason] = useState('');
  const [isTried, setTried] = useState(false);

  function ready(): ReadyAction | null {
    setTried(true);
    const written = reason.trim();
    if (written === '') return null;
    return { label: `mix ${mixNumber} held`, at: null, action: { kind: 'mix-quarantined', mixId, reason: written } };
  }

  return (
    <BenchForm batch={batch} submitLabel="Hold its pieces" ready={ready} onSent={onSent}>
      <p className="text-ink-soft">
        Its pieces are marked until each was tested, redone or scrapped. The batch cannot be finished meanwhile.
      </p>
      <TypedField
        label="Why"
        value={reason}
        onChange={setReason}
        error={isTried && reason.trim() === '' ? 'Write a few words.' : undefined}
      />
    </BenchForm>
  );
}
