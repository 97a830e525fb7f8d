'use client';

import { useCallback, useMemo, useState } from 'react';
import type { PlanConflict } from '@/app/_server/plan-view';
import type { PlannedVisit } from '@/lib/contracts/stored-plan';
import type { Instant } from '@/lib/units/instant';
import { PlanTimeline } from './plan-timeline';
import type { RowSource } from './timeline-rows';
import { VisitDialog } from './visit-dialog';

export interface PlanDeskProps extends RowSource {
  readonly nowAt: Instant;
  readonly horizonAt: Instant;
  readonly zone: string;
  readonly conflicts: readonly PlanConflict[];
  readonly canPin: boolean;
}

interface Opened {
  readonly visit: PlannedVisit;
  readonly droppedAt: Instant | null;
}

/** The timeline with the dialog of what was touched in it. */
export function PlanDesk({ conflicts, canPin, ...source }: PlanDeskProps) {
  const [opened, setOpened] = useState<Opened | null>(null);
  const close = useCallback(() => setOpened(null), []);
  const conflictKeys = useMemo(() => new Set(conflicts.flatMap(({ keys }) => keys)), [conflicts]);
  return (
    <>
      <PlanTimeline
        {...source}
        conflicts={conflictKeys}
        onOpen={(visit) => setOpened({ visit, droppedAt: null })}
        onDrop={(visit, startAt) => setOpened({ visit, droppedAt: startAt })}
      />
      {opened !== null && (
        <VisitDialog
          key={`${opened.visit.key} ${opened.droppedAt}`}
          {...opened}
          people={source.people}
          conflicts={conflicts.filter(({ keys }) => keys.includes(opened.visit.key)).map(({ text }) => text)}
          zone={source.zone}
          canPin={canPin}
          onClose={close}
        />
      )}
    </>
  );
}
