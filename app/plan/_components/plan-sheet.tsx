'use client';

import { type ReactNode, useSyncExternalStore } from 'react';
import type { PersonRow, PlaceRow, PlanConflict } from '@/app/_server/plan-view';
import { Section } from '@/app/_ui/page';
import type { Timetable } from '@/lib/contracts/stored-plan';
import type { Instant } from '@/lib/units/instant';
import { BatchComparison, type ComparedPlan } from './batch-comparison';
import { Figures } from './figures';
import { PlanDesk } from './plan-desk';
import { ImpossibleList, MovedList } from './plan-lists';
import { SessionWeeks } from './session-weeks';

/** What a plan is shown in, whichever plan it is. */
export interface PlanSetting {
  readonly people: readonly PersonRow[];
  readonly places: readonly PlaceRow[];
  readonly nowAt: Instant;
  readonly horizonAt: Instant;
  readonly zone: string;
  readonly hasHeld: boolean;
}

export interface PlanSheetProps {
  readonly timetable: Timetable;
  readonly setting: PlanSetting;
  /** Of the plan that holds; empty for one that is only tried. */
  readonly conflicts: readonly PlanConflict[];
  readonly isTried: boolean;
  readonly compared: readonly ComparedPlan[];
  /** Stands between the batches and the sessions. */
  readonly children: ReactNode;
}

/**
 * A plan on the screen. Bars and sessions are drawn by the browser alone: the server would draw a thousand of them for
 * a width that it does not know.
 */
export function PlanSheet({ timetable, setting, conflicts, isTried, compared, children }: PlanSheetProps) {
  const isInBrowser = useSyncExternalStore(neverChanges, inBrowser, onServer);
  const { people, places, nowAt, horizonAt, zone, hasHeld } = setting;
  const { visits, batches, moved } = timetable;
  return (
    <>
      <Figures timetable={timetable} />
      <ImpossibleList title="Without a place" visits={timetable.unplaced} />
      {isTried && <ImpossibleList title="Pins that cannot be kept" visits={timetable.pinClashes} />}
      {isInBrowser ? (
        <PlanDesk
          visits={visits}
          batches={batches}
          people={people}
          places={places}
          nowAt={nowAt}
          horizonAt={horizonAt}
          zone={zone}
          conflicts={conflicts}
          canPin={!isTried}
        />
      ) : (
        <p className="min-h-96 text-ink-soft">The timeline is being drawn.</p>
      )}
      {(isTried || moved.length > 0) && hasHeld && (
        <Section title="What moved" lead="Against the plan before, and why.">
          <MovedList moved={moved} zone={zone} />
        </Section>
      )}
      <Section title="Batches" lead={isTried ? 'Side by side; nothing is saved until it is accepted.' : undefined}>
        <BatchComparison plans={compared} zone={zone} />
      </Section>
      {children}
      {isInBrowser && <SessionWeeks visits={visits} people={people} zone={zone} />}
    </>
  );
}

const neverChanges = () => () => undefined;
const inBrowser = () => true;
const onServer = () => false;
