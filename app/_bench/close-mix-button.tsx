'use client';

import { buttonClass } from '../_ui/button-class';
import type { BatchRef } from './bench-context';
import { sendAction, tellRefusal } from './outbox';

export interface CloseMixButtonProps {
  readonly batch: BatchRef;
  readonly mixId: string;
  readonly mixNumber: number;
}

/** Closes a mix at one touch; the bar that says so offers to take it back. */
export function CloseMixButton({ batch, mixId, mixNumber }: CloseMixButtonProps) {
  async function close() {
    const label = `batch ${batch.number}, mix ${mixNumber} closed`;
    const { batchId, seenSeq } = batch;
    const outcome = await sendAction({ batchId, seenSeq, label, action: { kind: 'mix-closed', mixId } });
    if (outcome.kind === 'refused') tellRefusal(outcome);
  }
  return (
    <button type="button" className={buttonClass('plain')} onClick={() => void close()}>
      Close mix
    </button>
  );
}
