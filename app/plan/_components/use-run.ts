'use client';

import { useEffect, useState } from 'react';
import type { PlanRun } from '@/app/_server/plan-runs';

type RunState = Pick<PlanRun, 'status' | 'message' | 'plansMade' | 'version' | 'isHarder' | 'harder'>;

/** A search as the browser follows it. */
export interface FollowedRun extends RunState {
  readonly id: string;
  /** The best plan so far, a `Timetable` as JSON; null: none yet. */
  readonly timetableJson: string | null;
}

/** Looks at a running search, in ms. Chosen: a better plan is seen at once, and it costs next to nothing. */
const LOOK_MS = 300;

/** A search from what the page came with on: asked for its version until it is over, and for its plan when that rose. */
export function useRun(first: FollowedRun): { readonly run: FollowedRun; readonly follow: () => void } {
  const [followed, setFollowed] = useState(first);
  // The page came anew with another search.
  const run = followed.id === first.id ? followed : first;
  const { id, status, version } = run;
  useEffect(() => {
    if (status !== 'running') return;
    let isOver = false;
    const look = setTimeout(async () => {
      const next = await looked(id, version).catch(() => null);
      if (!isOver) setFollowed((before) => ({ ...(before.id === id ? before : first), ...next }));
    }, LOOK_MS);
    return () => {
      isOver = true;
      clearTimeout(look);
    };
  });
  // Begun anew: what came of it is not known any more.
  const follow = () => setFollowed({ ...run, status: 'running', isHarder: true, harder: null });
  return { run, follow };
}

/** What is new of a search; the plan only where its version rose. */
async function looked(id: string, version: number): Promise<Partial<FollowedRun>> {
  const address = `/api/v1/plan/runs/${id}`;
  const answer = await fetch(address);
  if (answer.status === 404) return { status: 'failed', message: 'This search is not kept any more. Plan anew.' };
  const state: RunState = await answer.json();
  if (state.version === version) return state;
  const plan = await fetch(`${address}/timetable`);
  return plan.status === 200 ? { ...state, timetableJson: await plan.text() } : state;
}
