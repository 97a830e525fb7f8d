import type { BenchAction, BenchBatch, Urgency } from '@/lib/batch/bench-entries';
import { planIndex } from '@/lib/batch/plan-index';
import type { Instant } from '@/lib/units/instant';

/** What can be done on one operation of one batch, while its groups are gathered. */
interface Ready {
  readonly pieces: number[];
  closesAt: Instant | null;
  sinceAt: Instant;
}

/**
 * All operations that can be done, one entry for each operation of a batch: windows that close first by the hour they
 * close, then batches with a due date by the day, then what has waited longest. Equal ones by batch number and route.
 */
export function urgentActions(batches: readonly BenchBatch[]): readonly BenchAction[] {
  const actions: { readonly action: BenchAction; readonly sinceAt: Instant; readonly number: number }[] = [];
  for (const batch of batches) {
    const { operations, indexOf } = planIndex(batch.plan);
    for (const [operationId, ready] of readyOperations(batch)) {
      const operation = operations[indexOf.get(operationId) ?? -1];
      if (operation === undefined) continue;
      const running = batch.state.mixes.filter((mix) => mix.operationId === operationId && mix.closedAt === null);
      const action: BenchAction = {
        batchId: batch.batchId,
        operationId,
        recordedAs: operation.recordedAs,
        pieces: ready.pieces.sort((a, b) => a - b),
        urgency: urgencyOf(batch, ready),
        runningMixIds: running.map(({ mixId }) => mixId),
      };
      actions.push({ action, sinceAt: ready.sinceAt, number: batch.number });
    }
  }
  actions.sort((a, b) => byUrgency(a.action.urgency, b.action.urgency) || a.sinceAt - b.sinceAt || a.number - b.number);
  return actions.map(({ action }) => action);
}

function readyOperations({ evaluation }: BenchBatch): ReadonlyMap<string, Ready> {
  const found = new Map<string, Ready>();
  for (const { operationId, pieces, status } of evaluation.groups) {
    if (status.kind !== 'ready') continue;
    const ready = found.get(operationId) ?? { pieces: [], closesAt: null, sinceAt: status.sinceAt };
    for (const piece of pieces) ready.pieces.push(piece);
    ready.sinceAt = Math.min(ready.sinceAt, status.sinceAt);
    if (status.closesAt !== null) ready.closesAt = Math.min(ready.closesAt ?? status.closesAt, status.closesAt);
    found.set(operationId, ready);
  }
  return found;
}

function urgencyOf({ dueOn }: BenchBatch, { closesAt, sinceAt }: Ready): Urgency {
  if (closesAt !== null) return { kind: 'window-closing', closesAt };
  return dueOn === null ? { kind: 'waiting', sinceAt } : { kind: 'due', dueOn };
}

const URGENCY_ORDER: readonly Urgency['kind'][] = ['window-closing', 'due', 'waiting'];

function byUrgency(a: Urgency, b: Urgency): number {
  if (a.kind === 'window-closing' && b.kind === 'window-closing') return a.closesAt - b.closesAt;
  if (a.kind === 'due' && b.kind === 'due') return a.dueOn < b.dueOn ? -1 : a.dueOn > b.dueOn ? 1 : 0;
  if (a.kind === 'waiting' && b.kind === 'waiting') return a.sinceAt - b.sinceAt;
  return URGENCY_ORDER.indexOf(a.kind) - URGENCY_ORDER.indexOf(b.kind);
}
