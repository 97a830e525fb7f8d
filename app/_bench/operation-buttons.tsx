import { recordedAs } from '@/lib/batch/decision';
import type { BenchEntry } from '../_server/bench';
import type { BatchRef } from './bench-context';
import { CloseMixButton } from './close-mix-button';
import { CoatButton } from './coat-button';
import { JointsButton } from './joints-button';
import { MixButton } from './mix-button';
import { WorkButton } from './work-button';

/** What a client part needs to know of the batch it acts on. */
export function batchRef({ head }: Pick<BenchEntry, 'head'>): BatchRef {
  return { batchId: head.id, number: head.number, seenSeq: head.lastSeq };
}

/** Pieces an operation can be recorded on now: those that are ready, and those only the maker can judge. */
export function doablePieces({ batch }: Pick<BenchEntry, 'batch'>, operationId: string): readonly number[] {
  return batch.evaluation.groups
    .filter(
      ({ operationId: id, status }) => id === operationId && (status.kind === 'ready' || status.kind === 'not-judged'),
    )
    .flatMap((group) => group.pieces)
    .sort((a, b) => a - b);
}

export interface OperationButtonsProps {
  readonly entry: BenchEntry;
  readonly operationId: string;
  readonly pieces: readonly number[];
}

/** The buttons with which an operation is done: at once for work, with a mix for glue and coats. */
export function OperationButtons({ entry, operationId, pieces }: OperationButtonsProps) {
  const { batch, cautions } = entry;
  const operation = batch.plan.operations.find(({ id }) => id === operationId);
  if (operation === undefined) return null;
  const common = { batch: batchRef(entry), operationId, operationName: operation.name };
  if (recordedAs(operation) === 'work') {
    return <WorkButton {...common} caution={cautions.get(operationId) ?? 'none'} pieces={pieces} />;
  }
  const running = batch.state.mixes.filter((mix) => mix.operationId === operationId && mix.closedAt === null);
  return (
    <>
      {running.map((mix) => (
        <UseMixButton key={mix.mixId} entry={entry} mixId={mix.mixId} pieces={pieces} />
      ))}
      <MixButton {...common} materialId={operation.materialId} isMain={running.length === 0} />
    </>
  );
}

export interface UseMixButtonProps {
  readonly entry: BenchEntry;
  readonly mixId: string;
  readonly pieces: readonly number[];
}

/** Sets joints or applies a coat with a running mix; nothing when no piece is ready for it. */
export function UseMixButton({ entry, mixId, pieces }: UseMixButtonProps) {
  const { plan, state } = entry.batch;
  const mix = state.mixes.find((candidate) => candidate.mixId === mixId);
  const operation = plan.operations.find(({ id }) => id === mix?.operationId);
  if (mix === undefined || operation === undefined || pieces.length === 0) return null;
  const common = { batch: batchRef(entry), mixId, mixNumber: mix.number, operationName: operation.name };
  if (recordedAs(operation) === 'coat') return <CoatButton {...common} pieces={pieces} />;
  const anchors = plan.anchors.filter(({ id }) => operation.anchorIds.includes(id));
  const unset = pieces.map((number) => ({
    number,
    unsetIds:
      state.pieces[number - 1]?.operations
        .find(({ operationId }) => operationId === operation.id)
        ?.joints.flatMap(({ anchorId, set }) => (set === null ? [anchorId] : [])) ?? [],
  }));
  return <JointsButton {...common} anchors={anchors} pieces={unset} />;
}

/** Closes a running mix. */
export function CloseButton({
  entry,
  mixId,
  mixNumber,
}: {
  readonly entry: BenchEntry;
  readonly mixId: string;
  readonly mixNumber: number;
}) {
  return <CloseMixButton batch={batchRef(entry)} mixId={mixId} mixNumber={mixNumber} />;
}
