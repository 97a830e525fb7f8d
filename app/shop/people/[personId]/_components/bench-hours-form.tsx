import { ActionForm } from '@/app/_ui/action-form';
import type { FormAction } from '@/app/_ui/form-state';
import { SubmitButton } from '@/app/_ui/submit-button';
import type { DaysStretch } from '@/app/shop/_components/hours-text';
import { StretchRows } from './stretch-rows';

/** The usual week of a person: stretches of hours, each on one or many days. */
export function BenchHoursForm({
  action,
  stretches,
}: {
  readonly action: FormAction;
  readonly stretches: readonly DaysStretch[];
}) {
  return (
    <ActionForm action={action}>
      <StretchRows stretches={stretches} />
      <div>
        <SubmitButton>Save bench hours</SubmitButton>
      </div>
    </ActionForm>
  );
}
