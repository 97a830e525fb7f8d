import { decideMovement, type MovementRequest, toMilli } from '@/lib/stock/ledger';
import type { Instant } from '@/lib/units/instant';
import { demoId } from './demo-id';
import { demoLotId } from './demo-materials';
import { IDA, MARLO, WES } from './demo-people';
import { type DemoTimes, daysAgo } from './demo-times';

/** A movement of the demo's stock, before it is fitted to its lot's book. */
export interface DemoMove {
  readonly id: string;
  readonly lotId: string;
  readonly request: MovementRequest;
  /** Number of the batch it was taken for. */
  readonly batchNumber: number | null;
  readonly personId: string;
  readonly reason: string;
  readonly at: Instant;
}

/** [lot, what, how much in the lot's unit, batch, by, days ago, at, reason] */
type MoveLine = readonly [string, 'issue' | 'count', number, number | null, string, number, string, string];

/** Wood, wire and hardware; cups take their glue by themselves. Enough of everything is left but the soft wire. */
const MOVES: readonly MoveLine[] = [
  ['Bundle 1', 'issue', 1020, 21, WES, 13, '18:40', ''],
  ['Bag A', 'issue', 36, 21, WES, 13, '18:42', ''],
  ['Board 1', 'issue', 1320, 23, WES, 12, '18:45', ''],
  ['Coil 5', 'issue', 2480, 23, WES, 12, '18:50', ''],
  ['Tub 2', 'issue', 360, 23, WES, 12, '18:52', ''],
  ['Plank 3', 'issue', 2250, 22, IDA, 10, '18:40', ''],
  ['Coil 2', 'issue', 4680, 22, IDA, 10, '18:44', ''],
  ['Sheet 7', 'issue', 18, 22, IDA, 9, '18:30', ''],
  ['Box 4', 'issue', 24, 21, MARLO, 6, '19:20', ''],
  ['Bag 6', 'issue', 24, 21, MARLO, 6, '19:21', ''],
  ['Card 6', 'issue', 24, 21, MARLO, 6, '19:22', ''],
  ['Coil 2', 'count', 9850, null, IDA, 5, '18:20', 'Stock-taking: a kinked length was thrown away.'],
  ['Plank 3', 'issue', 1440, 24, IDA, 4, '18:50', ''],
  ['Tub 1', 'issue', 32, 24, IDA, 4, '18:52', ''],
  ['Coil 2', 'issue', 4160, 24, IDA, 4, '18:55', ''],
  ['Bundle 1', 'issue', 850, 25, WES, 3, '18:55', ''],
  ['Bag A', 'issue', 30, 25, WES, 3, '18:57', ''],
];

/** The demo's movements in the order they happened. */
export function demoMoves(times: DemoTimes): readonly DemoMove[] {
  return MOVES.map(([lot, kind, quantity, batchNumber, personId, days, clock, reason], index) => ({
    id: demoId(`move-${index + 1}`),
    lotId: demoLotId(lot),
    request:
      kind === 'issue'
        ? { kind, milli: toMilli(quantity), foundLeftMilli: null }
        : { kind, countedMilli: toMilli(quantity) },
    batchNumber,
    personId,
    reason,
    at: daysAgo(times, days, clock),
  }));
}

/** The line of a movement in a book that holds `leftMilli`. Throws when the demo's story does not fit its lots. */
export function demoDraft({ id, request }: DemoMove, leftMilli: number) {
  const decision = decideMovement(leftMilli, request);
  const [draft] = decision.ok ? decision.drafts : [];
  if (draft === undefined) throw new Error(`the demo movement ${id} does not fit what is left`);
  return draft;
}

/** Buyers' order numbers of the demo's batches, and of single pieces that belong to another. */
export const DEMO_ORDERS: readonly {
  readonly batchNumber: number;
  readonly orderNumber: string;
  readonly pieces?: { readonly from: number; readonly orderNumber: string };
}[] = [
  { batchNumber: 21, orderNumber: 'C-118' },
  { batchNumber: 22, orderNumber: 'W-204', pieces: { from: 13, orderNumber: 'W-211' } },
  { batchNumber: 25, orderNumber: 'C-131' },
];

/** What the demo's shop reckons with: invented. */
export const DEMO_RATES = { labourPerHourMinor: 2400, marginShare: 0.35 } as const;

/** How demo materials are bought: invented. */
export const DEMO_BUYING: Readonly<
  Record<
    string,
    {
      readonly stockUnit: 'g' | 'mm' | 'pieces';
      readonly packQuantity: number;
      readonly packPriceMinor: number;
      readonly reorderPoint: number;
      readonly leadTimeDays: number;
    }
  >
> = {
  [demoId('epoxy-30')]: {
    stockUnit: 'g',
    packQuantity: 1480,
    packPriceMinor: 5040,
    reorderPoint: 300,
    leadTimeDays: 6,
  },
  [demoId('topcoat')]: { stockUnit: 'g', packQuantity: 1000, packPriceMinor: 4800, reorderPoint: 200, leadTimeDays: 6 },
  [demoId('hook-4')]: {
    stockUnit: 'pieces',
    packQuantity: 100,
    packPriceMinor: 4900,
    reorderPoint: 50,
    leadTimeDays: 9,
  },
};
