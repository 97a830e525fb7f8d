'use client';

import { useRouter } from 'next/navigation';
import { useEffect, useState, useTransition } from 'react';
import { buttonClass } from '@/app/_ui/button-class';
import type { Timetable, WhatIf } from '@/lib/contracts/stored-plan';
import { acceptPlanAction, cancelPlanAction, startPlanAction, tryHarderAction } from '../actions';
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

export interface RunStateProps {
  readonly run: FollowedRun;
  readonly timetable: Timetable | null;
  /** Follows a search that goes on. */
  readonly onBegun: () => void;
}

/** How far a search is, with what can be done about it: stop, try harder, accept, leave. */
export function RunState({ run, timetable, onBegun }: RunStateProps) {
  const router = useRouter();
  const [message, setMessage] = useState<string | null>(null);
  const [isPending, start] = useTransition();
  const isRunning = run.status === 'running';
  return (
    <div className="grid gap-3">
      <p role="status">
        {!isRunning && 'The search is over.'}
        {isRunning && !run.isHarder && `Looking for a better plan: ${run.plansMade} plans made so far.`}
        {isRunning && run.isHarder && <HarderSeconds />}
        {run.harder !== null && ` ${run.harder}`}
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
        {!isRunning && timetable !== null && couldBeBetter(timetable) && (
          <button
            type="button"
            disabled={isPending}
            className={buttonClass('plain')}
            onClick={() =>
              start(async () => {
                const answer = await tryHarderAction(run.id);
                if (answer.ok) onBegun();
                else setMessage(answer.message);
              })
            }
          >
            Try harder, about half a minute
          </button>
        )}
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

/** Whether a plan is late, and not as little late as can be. */
function couldBeBetter({ value, isProvedBest, unplaced }: Timetable): boolean {
  return value.weightedLateMinutes > 0 && !isProvedBest && unplaced.length === 0;
}

/** How long it has been looked for, from when this came into view. */
function HarderSeconds() {
  const [seconds, setSeconds] = useState(0);
  useEffect(() => {
    const tick = setInterval(() => setSeconds((before) => before + 1), 1_000);
    return () => clearInterval(tick);
  }, []);
  return (
    <>
      Trying harder for a better plan. <span aria-hidden="true">{seconds} s so far.</span>
    </>
  );
}
