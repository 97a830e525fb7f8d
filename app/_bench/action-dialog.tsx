'use client';

import { type FormEvent, type ReactNode, useCallback, useState } from 'react';
import type { BatchAction } from '@/lib/contracts/batch-action';
import type { Instant } from '@/lib/units/instant';
import { type ButtonWeight, buttonClass } from '../_ui/button-class';
import { Dialog } from '../_ui/dialog';
import type { BatchRef } from './bench-context';
import { type FirstTry, sendAction } from './outbox';

export interface ActionDialogProps {
  readonly label: ReactNode;
  readonly title: string;
  readonly weight?: ButtonWeight;
  /** What stands in the dialog; `close` when the action is on its way. */
  readonly children: (close: () => void) => ReactNode;
}

/** A button that opens the dialog of one action. */
export function ActionDialog({ label, title, weight = 'plain', children }: ActionDialogProps) {
  const [isOpen, setOpen] = useState(false);
  const close = useCallback(() => setOpen(false), []);
  return (
    <>
      <button type="button" className={buttonClass(weight)} onClick={() => setOpen(true)}>
        {label}
      </button>
      <Dialog isOpen={isOpen} onClose={close} title={title}>
        {children(close)}
      </Dialog>
    </>
  );
}

/** An action ready to be sent, with what it is called in the maker's words. */
export interface ReadyAction {
  readonly action: BatchAction;
  readonly label: string;
  readonly at: Instant | null;
}

export interface BenchFormProps {
  readonly batch: BatchRef;
  readonly submitLabel: string;
  /** Reads the fields; null when some are wrong and say so themselves. */
  readonly ready: () => ReadyAction | null;
  readonly onSent: () => void;
  readonly children: ReactNode;
}

type Refused = Extract<FirstTry, { kind: 'refused' }>;

/** The form in an action's dialog. It stays open with everything in it until the server took the action in. */
export function BenchForm({ batch, submitLabel, ready, onSent, children }: BenchFormProps) {
  const [isSending, setSending] = useState(false);
  const [refused, setRefused] = useState<Refused | null>(null);

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const action = ready();
    if (action === null || isSending) return;
    setSending(true);
    setRefused(null);
    const outcome = await sendAction({
      batchId: batch.batchId,
      seenSeq: batch.seenSeq,
      action: action.action,
      label: `batch ${batch.number}, ${action.label}`,
      at: action.at ?? undefined,
    });
    setSending(false);
    if (outcome.kind === 'refused') setRefused(outcome);
    else onSent();
  }

  return (
    <form noValidate onSubmit={(event) => void send(event)} className="grid gap-5">
      {children}
      <div role="status" aria-live="polite">
        {refused !== null && (
          <div className="grid gap-1 border-l-4 border-accent bg-accent-soft px-4 py-3">
            <p className="font-semibold">{refused.message}</p>
            {refused.details.map((detail) => (
              <p key={detail}>{detail}</p>
            ))}
          </div>
        )}
      </div>
      <div className="sticky bottom-0 -mx-5 -mb-5 border-t border-line bg-sheet px-5 py-3 sm:-mx-6 sm:-mb-6 sm:px-6">
        <button type="submit" aria-disabled={isSending} className={`${buttonClass('primary')} w-full`}>
          {isSending ? 'Saving…' : submitLabel}
        </button>
      </div>
    </form>
  );
}
