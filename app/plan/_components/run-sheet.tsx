'use client';

import { type ReactNode, useMemo } from 'react';
import { Section } from '@/app/_ui/page';
import type { Timetable } from '@/lib/contracts/stored-plan';
import type { ComparedPlan } from './batch-comparison';
import { Warnings } from './plan-lists';
import { type PlanSetting, PlanSheet } from './plan-sheet';
import { RunState } from './run-buttons';
import { type FollowedRun, useRun } from './use-run';

export interface RunSheetProps {
  readonly run: FollowedRun;
  readonly title: string;
  readonly setting: PlanSetting;
  /** The plan that holds, and others that were tried. */
  readonly compared: readonly ComparedPlan[];
  /** What the shop is told whichever plan is looked at. */
  readonly facts: ReactNode;
  readonly children: ReactNode;
}

/** A plan that is only tried, while it is looked for and after. */
export function RunSheet({ run: first, title, setting, compared, facts, children }: RunSheetProps) {
  const { run, follow } = useRun(first);
  const { timetableJson } = run;
  const timetable = useMemo(
    (): Timetable | null => (timetableJson === null ? null : JSON.parse(timetableJson)),
    [timetableJson],
  );
  return (
    <>
      <Section title={title} lead="Only tried so far: the plan that holds stays until this one is accepted.">
        {run.message !== null && <Warnings sentences={[run.message]} />}
        <RunState run={run} timetable={timetable} onBegun={follow} />
      </Section>
      {facts}
      {timetable === null ? (
        children
      ) : (
        <PlanSheet
          timetable={timetable}
          setting={setting}
          conflicts={NO_CONFLICTS}
          isTried
          compared={[...compared, { id: run.id, title: timetable.whatIf.join('; ') || 'New plan', summary: timetable }]}
        >
          {children}
        </PlanSheet>
      )}
    </>
  );
}

const NO_CONFLICTS = [] as const;
