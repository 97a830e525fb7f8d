/** What the fold met that cannot be, or should not have been. It is kept and shown; nothing is thrown away. */
export const ANOMALY_CODES = [
  'unreadable',
  'bad-instant',
  'not-opened',
  'already-opened',
  'bad-quantity',
  'before-opening',
  'batch-finished',
  'not-finished',
  'open-pieces',
  'unknown-operation',
  'wrong-operation-kind',
  'no-pieces',
  'unknown-pieces',
  'unknown-anchor',
  'scrapped-pieces',
  'already-done',
  'before-needs',
  'unknown-mix',
  'duplicate-mix',
  'mix-closed',
  'before-mix',
  'closed-before-last-use',
  'not-done',
  'not-quarantined',
  'unknown-event',
  'cannot-correct-opening',
  'already-corrected',
] as const;
export type AnomalyCode = (typeof ANOMALY_CODES)[number];

export interface Anomaly {
  readonly seq: number;
  readonly code: AnomalyCode;
  /** False: this part of the event was left out of the state. True: it was taken in, but should not have been. */
  readonly applied: boolean;
  /** The pieces it is about, rising, at most 100 of them; empty where it is about the event as a whole. */
  readonly pieces: readonly number[];
  /** All pieces or joints it is about, however many. */
  readonly count: number;
}
