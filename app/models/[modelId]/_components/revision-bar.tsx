import Link from 'next/link';
import { ActionForm } from '@/app/_ui/action-form';
import { DialogButton } from '@/app/_ui/dialog-button';
import { StatusMark } from '@/app/_ui/status-mark';
import { SubmitButton } from '@/app/_ui/submit-button';
import { dateText } from '@/lib/units/format-instant';
import type { Model } from '@/prisma/data/models';
import type { Revision } from '@/prisma/data/revisions';
import { freezeAction, reviseAction } from '../actions';

export interface RevisionBarProps {
  readonly model: Model;
  readonly revision: Revision;
  readonly zone: string;
}

/** The revisions of a model, which one is shown, and the step that comes next: freeze, or revise. */
export function RevisionBar({ model, revision, zone }: RevisionBarProps) {
  const shown = model.revisions.find((head) => head.id === revision.id);
  const isNewest = model.revisions[0]?.id === revision.id;
  return (
    <div className="grid gap-4 rounded-sheet border border-line bg-sheet p-4 sm:p-5">
      <nav aria-label="Revisions">
        <ul className="flex flex-wrap gap-2">
          {model.revisions.map((head) => (
            <li key={head.id}>
              <Link
                href={`/models/${model.id}?revision=${head.letter}`}
                prefetch={false}
                aria-current={head.id === revision.id ? 'true' : undefined}
                className="inline-flex min-h-touch items-center gap-3 rounded-sheet border-2 border-line-strong px-3 aria-[current=true]:border-ink aria-[current=true]:bg-well"
              >
                <span className="text-lg font-bold">{head.letter}</span>
                <StatusMark status={head.frozenAt === null ? 'draft' : 'frozen'} />
              </Link>
            </li>
          ))}
        </ul>
      </nav>
      <div className="flex flex-wrap items-center justify-between gap-4">
        <p className="max-w-2xl text-ink-soft">{standing(revision, shown?.batchCount ?? 0, zone)}</p>
        {revision.frozenAt === null ? (
          <Freeze revision={revision} />
        ) : (
          isNewest && (
            <ActionForm action={reviseAction.bind(null, model.id)} className="grid">
              <SubmitButton weight="plain" pendingText="Copying…">
                Revise: make the next letter
              </SubmitButton>
            </ActionForm>
          )
        )}
      </div>
    </div>
  );
}

function standing(revision: Revision, batchCount: number, zone: string): string {
  if (revision.frozenAt === null) {
    return 'A draft: change whatever you like. Starting a batch of it freezes it.';
  }
  const batches = batchCount === 0 ? 'no batches' : batchCount === 1 ? 'one batch' : `${batchCount} batches`;
  return `Frozen on ${dateText(revision.frozenAt, zone)}, with ${batches}. It is never changed again; what you change becomes the next revision.`;
}

function Freeze({ revision }: { readonly revision: Revision }) {
  return (
    <DialogButton label={`Freeze revision ${revision.letter}`} title={`Freeze revision ${revision.letter}?`}>
      <ActionForm action={freezeAction.bind(null, revision.id)}>
        <input type="hidden" name="seenAt" value={revision.updatedAt} />
        <p>
          Body, anchors, route and bill of this revision can then never be changed: its batches and pull tests keep
          their meaning. To change something later, make the next revision. Freezing cannot be undone.
        </p>
        <div>
          <SubmitButton pendingText="Freezing…">Freeze it</SubmitButton>
        </div>
      </ActionForm>
    </DialogButton>
  );
}
