'use client';

import { buttonClass } from '../_ui/button-class';
import type { BatchRef } from './bench-context';
import { sendAction, tellRefusal } from './outbox';

export interface BatchStatusButtonProps {
  readonly batch: BatchRef;
  readonly isFinished: boolean;
}

/** Finishes a batch, or opens a finished one again. */
export function BatchStatusButton({ batch, isFinished }: BatchStatusButtonProps) {
  async function send() {
    const { batchId, seenSeq, number } = batch;
    const outcome = await sendAction({
      batchId,
      seenSeq,
      label: `batch ${number} ${isFinished ? 'reopened' : 'finished'}`,
      action: { kind: isFinished ? 'batch-reopened' : 'batch-finished' },
    });
    if (outcome.kind === 'refused') tellRefusal(outcome);
  }
  return (
    <button type="button" className={buttonClass('plain')} onClick={() => void send()}>
      {isFinished ? 'Reopen' : 'Finish batch'}
    </button>
  );
}
