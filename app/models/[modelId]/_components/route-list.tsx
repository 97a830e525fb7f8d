import { CAUTION_WORDS } from '@/app/_ui/caution-words';
import { OPERATION_WORDS, WAIT_WORDS } from '@/app/models/_components/words';
import { durationText } from '@/lib/units/format-duration';
import { MINUTE_MS } from '@/lib/units/instant';
import type { Revision, RevisionOperation } from '@/prisma/data/revisions';

/** The steps of a model in their order, with what each waits for. */
export function RouteList({ revision }: { readonly revision: Revision }) {
  const { operations } = revision;
  if (operations.length === 0) {
    return (
      <p className="max-w-2xl text-ink-soft">
        No steps yet. Write them as you do them: shape, drill, set the anchors, sand, seal, coats, hooks. For each, say
        what it waits for, and the bench will know when it may begin.
      </p>
    );
  }
  const minutes = operations.reduce((sum, operation) => sum + operation.attendedMinutes, 0);
  return (
    <div className="grid gap-3">
      <ol className="grid gap-3">
        {operations.map((operation) => (
          <Operation key={operation.id} operation={operation} revision={revision} />
        ))}
      </ol>
      <p className="text-ink-soft">Attended time of one piece: {durationText(minutes * MINUTE_MS)}.</p>
    </div>
  );
}

function Operation({ operation, revision }: { readonly operation: RevisionOperation; readonly revision: Revision }) {
  return (
    <li className="grid gap-x-5 gap-y-1 rounded-sheet border border-line bg-sheet p-4 sm:grid-cols-[2.5rem_1fr_auto]">
      <span aria-hidden="true" className="text-2xl leading-7 font-bold text-ink-soft max-sm:hidden">
        {operation.position}
      </span>
      <div className="grid gap-1">
        <p className="font-bold">{operation.name}</p>
        <p className="text-sm text-ink-soft">{waitText(operation, revision)}</p>
        {operation.caution !== 'none' && (
          <p className="text-sm">Caution at the bench: {CAUTION_WORDS[operation.caution].title.toLowerCase()}</p>
        )}
      </div>
      <p className="text-sm sm:text-right">
        <span className="font-semibold">{OPERATION_WORDS[operation.kind]}</span>, {operation.attendedMinutes} min a
        piece
        {operation.material !== null && (
          <>
            <br />
            {operation.material.name}
          </>
        )}
        {operation.kind === 'glue' && (
          <>
            <br />
            sets {anchorNames(operation, revision)}
          </>
        )}
      </p>
    </li>
  );
}

function waitText(operation: RevisionOperation, { operations }: Revision): string {
  if (operation.needs.length === 0) return 'Waits for nothing.';
  const parts = operation.needs.map(({ operationId, wait }) => {
    const name = operations.find((other) => other.id === operationId)?.name ?? 'an earlier step';
    return `“${name}” is ${WAIT_WORDS[wait]}`;
  });
  return `Waits until ${parts.join(', and ')}.`;
}

function anchorNames({ anchorPositions }: RevisionOperation, { anchors }: Revision): string {
  if (anchorPositions.length === 0) return 'all anchors';
  return anchors
    .filter((anchor) => anchorPositions.includes(anchor.position))
    .map((anchor) => anchor.name)
    .join(', ');
}
