import type { ReactNode } from 'react';
import { ActionForm } from '@/app/_ui/action-form';
import { ButtonLink } from '@/app/_ui/button-link';
import type { FormAction } from '@/app/_ui/form-state';
import { Page } from '@/app/_ui/page';
import { SubmitButton } from '@/app/_ui/submit-button';
import type { Model } from '@/prisma/data/models';
import type { Revision } from '@/prisma/data/revisions';

export interface DraftFormProps {
  readonly model: Model;
  readonly revision: Revision;
  /** "Body", "Anchors", ... */
  readonly part: string;
  readonly lead: string;
  readonly action: FormAction;
  readonly children: ReactNode;
}

/** Frame of the screens that change one part of a draft revision. */
export function DraftForm({ model, revision, part, lead, action, children }: DraftFormProps) {
  const href = `/models/${model.id}`;
  return (
    <Page
      title={`${part} of ${model.name}, ${revision.letter}`}
      lead={lead}
      up={{ href, label: `${model.name}, without saving` }}
    >
      <ActionForm action={action}>
        <input type="hidden" name="seenAt" value={revision.updatedAt} />
        {children}
        <div className="flex flex-wrap gap-3 border-t-2 border-ink pt-4">
          <SubmitButton>Save the {part.toLowerCase()}</SubmitButton>
          <ButtonLink href={href} weight="quiet">
            Leave without saving
          </ButtonLink>
        </div>
      </ActionForm>
    </Page>
  );
}
