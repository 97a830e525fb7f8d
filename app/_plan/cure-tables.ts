import type { AdhesiveSheet, Milestone } from '@/lib/cure/adhesive-sheet';
import { CURE_TABLE_STEP_MINUTES, cureLagTable } from '@/lib/schedule/cure-lag-table';
import type { Lag, LagTable } from '@/lib/schedule/lag';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';
import type { PlanInput } from './plan-input';

/** A cure that is not reached however long one waits: what cannot be judged is never called ready. */
const NEVER: LagTable = { id: 'never', startMinute: 0, stepMinutes: 1, minutes: [null] };
export const NEVER_LAG: Lag = { kind: 'table', tableId: NEVER.id };

/** Before now: what is under way began a while ago. Within the day that every course begins before. */
const LEAD_MINUTES = 23 * 60;

/** Tables that were computed along a course, by sheet, milestone and beginning: the course outlives many problems. */
const known = new WeakMap<PlanInput['lanesOf'], Map<string, LagTable | null>>();
/** A day's worth of beginnings for the sheets of a shop; then the look-up begins anew. Chosen. */
const MOST_KNOWN = 500;

/** The tables of one problem: each sheet and milestone is computed once. */
export class CureTables {
  readonly #tables = new Map<string, LagTable | null>();

  constructor(
    private readonly input: Pick<PlanInput, 'lanesOf' | 'nowAt' | 'batches'>,
    private readonly epochAt: number,
    private readonly horizonMinute: number,
  ) {}

  /** How long a cure takes to a milestone by when it begins; null where the sheet does not say or cannot be used. */
  lag(sheet: AdhesiveSheet, milestone: Milestone): Lag | null {
    const key = JSON.stringify([
      milestone,
      sheet.milestoneHours[milestone],
      milestone === 'recoat-by' ? (sheet.recoatCapHours ?? null) : null,
      sheet.referenceC,
      sheet.minCureC,
      sheet.rateLaw,
    ]);
    let table = this.#tables.get(key);
    if (table === undefined) {
      const shared = this.#looked(key, sheet, milestone);
      table = shared === null ? null : { ...shared, id: `cure-${this.#tables.size + 1}` };
      this.#tables.set(key, table);
    }
    return table === null ? null : { kind: 'table', tableId: table.id };
  }

  /** Every table that a lag may name. */
  all(): readonly LagTable[] {
    return [NEVER, ...[...this.#tables.values()].filter((table) => table !== null)];
  }

  #looked(sheetKey: string, sheet: AdhesiveSheet, milestone: Milestone): LagTable | null {
    const firstMinute = Math.floor((this.#firstAt() - this.epochAt) / MINUTE_MS);
    // On a grid that does not move with the clock: the same beginning has the same end whenever it is asked for.
    const fromMinute = Math.floor(firstMinute / CURE_TABLE_STEP_MINUTES) * CURE_TABLE_STEP_MINUTES;
    const tables = known.get(this.input.lanesOf) ?? new Map<string, LagTable | null>();
    known.set(this.input.lanesOf, tables);
    const key = [sheetKey, this.epochAt, fromMinute, this.horizonMinute].join(' ');
    const kept = tables.get(key);
    if (kept !== undefined) return kept;
    if (tables.size >= MOST_KNOWN) tables.clear();
    const table = this.#computed(sheet, milestone, fromMinute);
    tables.set(key, table);
    return table;
  }

  /** Some hours ago, or when the first mix that still runs was mixed. Every course begins a day before its first mix. */
  #firstAt(): Instant {
    const { batches, nowAt } = this.input;
    const running = batches.flatMap(({ known }) =>
      known.state.mixes.flatMap(({ closedAt, mixedAt }) => (closedAt === null ? [mixedAt] : [])),
    );
    return Math.min(nowAt - LEAD_MINUTES * MINUTE_MS, ...running);
  }

  #computed(sheet: AdhesiveSheet, milestone: Milestone, fromMinute: number): LagTable | null {
    try {
      const lanes = this.input.lanesOf(sheet);
      return cureLagTable('cure', sheet, lanes, milestone, this.epochAt, fromMinute, this.horizonMinute);
    } catch (error) {
      // Figures that cannot be computed with are told as such on the batch's page; here they promise nothing.
      if (error instanceof RangeError) return null;
      throw error;
    }
  }
}
