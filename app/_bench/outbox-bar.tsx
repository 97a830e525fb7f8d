'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useSyncExternalStore } from 'react';
import { buttonClass } from '../_ui/button-class';
import {
  dismissAnswer,
  dropOldest,
  emptyOutbox,
  type LastAnswer,
  outboxState,
  retryNow,
  sendAction,
  subscribeToOutbox,
  tellRefusal,
} from './outbox';

const SAVED_SHOWN_MS = 12_000;

/** Says whether what was just done is saved, offers to take it back, and shows why something was refused. */
export function OutboxBar() {
  const { unsent, isStuck, last } = useSyncExternalStore(subscribeToOutbox, outboxState, emptyOutbox);
  const router = useRouter();

  useEffect(() => {
    if (last === null) return;
    router.refresh();
    if (last.kind === 'refused' || last.warnings.length > 0) return;
    const timer = setTimeout(dismissAnswer, SAVED_SHOWN_MS);
    return () => clearTimeout(timer);
  }, [last, router]);

  useEffect(() => {
    window.addEventListener('online', retryNow);
    return () => window.removeEventListener('online', retryNow);
  }, []);

  return (
    <div
      role="status"
      aria-live="polite"
      className="fixed inset-x-0 bottom-0 z-20 grid justify-items-center gap-2 px-3 pb-3 max-md:bottom-16 print:hidden"
    >
      {unsent.length > 0 && (
        <div className={sheet}>
          <p className="min-w-0 flex-1 basis-full">
            <strong>Not saved yet:</strong> {unsent.map((item) => item.label).join('; ')}.
            {isStuck && ' The server does not answer. Trying again until it does; keep this page.'}
          </p>
          {isStuck && (
            <>
              <button type="button" className={buttonClass('plain')} onClick={retryNow}>
                Try now
              </button>
              <button type="button" className={buttonClass('remove')} onClick={dropOldest}>
                Drop it
              </button>
            </>
          )}
        </div>
      )}
      {last !== null && unsent.length === 0 && <Answer last={last} />}
    </div>
  );
}

const sheet =
  'flex w-full max-w-xl flex-wrap items-center gap-x-4 gap-y-2 rounded-sheet border-2 border-ink bg-sheet px-4 py-2 shadow-lg';

function Answer({ last }: { readonly last: LastAnswer }) {
  if (last.kind === 'refused') {
    return (
      <div className={sheet}>
        <div className="min-w-0 flex-1 basis-60">
          <p>
            <strong>Not done: {last.label}.</strong> {last.message}
          </p>
          {last.details.map((detail) => (
            <p key={detail} className="text-sm text-ink-soft">
              {detail}
            </p>
          ))}
        </div>
        <button type="button" className={buttonClass('plain')} onClick={dismissAnswer}>
          Understood
        </button>
      </div>
    );
  }
  async function undo(saved: Extract<LastAnswer, { kind: 'saved' }>) {
    const outcome = await sendAction({
      batchId: saved.batchId,
      seenSeq: saved.seq,
      label: `undo ${saved.label}`,
      action: { kind: 'corrected', seq: saved.seq, reason: 'Taken back at once', replacement: null },
    });
    if (outcome.kind === 'refused') tellRefusal(outcome);
  }
  return (
    <div className={sheet}>
      <div className="min-w-0 flex-1 basis-40">
        <p>
          <strong>Saved:</strong> {last.label}.
        </p>
        {last.warnings.map((warning) => (
          <p key={warning} className="text-sm font-semibold text-accent">
            {warning}
          </p>
        ))}
      </div>
      {!last.isUndo && (
        <button type="button" className={buttonClass('plain')} onClick={() => void undo(last)}>
          Undo
        </button>
      )}
      {last.warnings.length > 0 && (
        <button type="button" className={buttonClass('quiet')} onClick={dismissAnswer}>
          Understood
        </button>
      )}
    </div>
  );
}
