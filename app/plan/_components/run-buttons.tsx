'use client';

import { useRouter } from 'next/navigation';
import { useState, useTransition } from 'react';
import { buttonClass } from '@/app/_ui/button-class';
import type { WhatIf } from '@/lib/contracts/stored-plan';
import { acceptPlanAction, cancelPlanAction, startPlanAction } from '../actions';
import type { FollowedRun } from './use-run';

/** Begins a search and goes to it. */
export function StartButton({ label, whatIf }: { readonly label: string; readonly whatIf: Partial<WhatIf> | null }) {
  const router = useRouter();
  const [isPending, start] = useTransition();
  const [message, setMessage] = useState<string | null>(null);
  return (
    <>
      <button
        type="button"
        disabled={isPending}
        className={buttonClass('primary')}
        onClick={() =>
          start(async () => {
            const answer = await startPlanAction({ whatIf });
            if (answer.ok) router.push(`/plan?run=${answer.runId}`);
            else setMessage(answer.message);
          })
        }
      >
        {isPending ? 'Starting…' : label}
      </button>
      {message !== null && <p role="alert">{message}</p>}
    </>
  );
}

/** How far a search is, with what can be done about it: stop, accept, leave. */
export function RunState({ run }: { readonly run: FollowedRun }) {
  const router = useRouter();
  const [message, setMessage] = useState<string | null>(null);
  const [isPending, start] = useTransition();
  const isRunning = run.status === 'running';
  return (
    <div className="grid gap-3">
      <p role="status">
        {isRunning ? `Looking for a better plan: ${run.plansMade} plans made so far.` : 'The search is over.'}
      </p>
      <div className="flex flex-wrap gap-3">
        <button
          type="button"
          disabled={isPending || run.timetableJson === null}
          className={buttonClass('primary')}
          onClick={() =>
            start(async () => {
              const answer = await acceptPlanAction(run.id);
              if (answer.ok) router.push('/plan');
              else setMessage(answer.message);
            })
          }
        >
          Accept this plan
        </button>
        {isRunning && (
          <button type="button" className={buttonClass('plain')} onClick={() => void cancelPlanAction(run.id)}>
            Stop looking
          </button>
        )}
        <button type="button" className={buttonClass('quiet')} onClick={() => router.push('/plan')}>
          Leave it
        </button>
      </div>
      {message !== null && (
        <p role="alert" className="border-l-4 border-accent bg-accent-soft px-4 py-3">
          {message}
        </p>
      )}
    </div>
  );
}
