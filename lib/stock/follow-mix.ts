import type { MovementDraft } from './ledger';

/**
 * The lines a lot's book gets so that a cup has taken `wantedMilli` of it, when `takenMilli` is written already. What
 * was poured was there: where the book holds less, a correction that says so comes first, and the book stays at 0.
 */
export function followMix(leftMilli: number, takenMilli: number, wantedMilli: number): readonly MovementDraft[] {
  const moreMilli = wantedMilli - takenMilli;
  if (moreMilli === 0) return [];
  if (moreMilli < 0) {
    return [{ kind: 'correction', quantityMilli: -moreMilli, leftMilli: leftMilli - moreMilli }];
  }
  const shortMilli = Math.max(0, moreMilli - leftMilli);
  const issue: MovementDraft = {
    kind: 'issue',
    quantityMilli: -moreMilli,
    leftMilli: leftMilli + shortMilli - moreMilli,
  };
  if (shortMilli === 0) return [issue];
  return [{ kind: 'correction', quantityMilli: shortMilli, leftMilli: leftMilli + shortMilli }, issue];
}
