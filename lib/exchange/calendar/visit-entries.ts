import { countText } from '@/lib/batch/batch-words';
import type { Instant } from '@/lib/units/instant';
import type { CalendarEntry } from './calendar-entry';

/** A planned visit as the calendar takes it in. */
export interface CalendarVisit {
  readonly key: string;
  readonly batchNumber: number;
  readonly modelName: string;
  readonly operationName: string;
  readonly materialName: string | null;
  readonly personName: string | null;
  readonly pieceCount: number;
  readonly startAt: Instant;
  readonly finishAt: Instant;
}

/** Time to walk over and put the gloves on. Chosen. */
const RINGS_BEFORE_MINUTES = 15;

/** Planned glue-ups and coats: one entry for each visit, which keeps its name when it moves. */
export function visitEntries(visits: readonly CalendarVisit[]): readonly CalendarEntry[] {
  return visits
    .filter(({ startAt, finishAt }) => finishAt > startAt)
    .map((visit) => {
      const summary = `Batch ${visit.batchNumber}, ${visit.modelName}: ${visit.operationName}`;
      const who = visit.personName === null ? '' : ` ${visit.personName}.`;
      const material = visit.materialName === null ? '' : `, ${visit.materialName}`;
      return {
        uid: `visit-${visit.key.replace(':', '-')}@lurewright`,
        startAt: visit.startAt,
        endAt: visit.finishAt,
        summary,
        description: `${countText(visit.pieceCount, 'piece')}${material}.${who} Planned; the Bench says whether the cure allows it.`,
        isAttended: true,
        alarms: [{ from: 'start', minutesBefore: RINGS_BEFORE_MINUTES, text: summary }],
      };
    });
}
