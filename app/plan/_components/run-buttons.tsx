'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useRef, useState, useTransition } from 'react';
import { buttonClass } from '@/app/_ui/button-class';
import type { WhatIf } from '@/lib/contracts/stored-plan';
import { acceptPlanAction, cancelPlanAction, startPlanAction } from '../actions';

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

/** Looks at a running search, in ms. Chosen: a better plan is seen at once, and it costs next to nothing. */
const LOOK_MS = 300;

export interface RunStateProps {
  readonly runId: string;
  readonly isRunning: boolean;
  readonly version: number;
  readonly hasPlan: boolean;
}

/** How far a search is, with what can be done about it: stop, accept, leave. */
export function RunState({ runId, isRunning, version, hasPlan }: RunStateProps) {
  const router = useRouter();
  const [plansMade, setPlansMade] = useState(0);
  const [message, setMessage] = useState<string | null>(null);
  const [isPending, start] = useTransition();
  const shown = useRef(version);

  useEffect(() => {
    if (!isRunning) return;
    const look = setInterval(async () => {
      const answer = await fetch(`/api/v1/plan/runs/${runId}`).catch(() => null);
      if (answer === null) return;
      const body: unknown = await answer.json();
      if (typeof body !== 'object' || body === null) return;
      if ('plansMade' in body && typeof body.plansMade === 'number') setPlansMade(body.plansMade);
      const newest = 'version' in body && typeof body.version === 'number' ? body.version : -1;
      // Asked for once: the next look comes before a long page has been drawn.
      if (newest === shown.current) return;
      shown.current = newest;
      router.refresh();
    }, LOOK_MS);
    return () => clearInterval(look);
  }, [runId, isRunning, router]);

  return (
    <div className="grid gap-3">
      <p role="status">
        {isRunning ? `Looking for a better plan: ${plansMade} plans made so far.` : 'The search is over.'}
      </p>
      <div className="flex flex-wrap gap-3">
        <button
          type="button"
          disabled={isPending || !hasPlan}
          className={buttonClass('primary')}
          onClick={() =>
            start(async () => {
              const answer = await acceptPlanAction(runId);
              if (answer.ok) router.push('/plan');
              else setMessage(answer.message);
            })
          }
        >
          Accept this plan
        </button>
        {isRunning && (
          <button type="button" className={buttonClass('plain')} onClick={() => void cancelPlanAction(runId)}>
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
