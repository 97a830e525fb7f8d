import { ActionForm } from '@/app/_ui/action-form';
import { DialogButton } from '@/app/_ui/dialog-button';
import { TextField } from '@/app/_ui/field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { saveBatchPlanningAction } from '@/app/batches/actions';
import { plainDecimals } from '@/lib/units/quantity-input';
import type { BatchHead } from '@/prisma/data/batches';

/** When a batch may begin and is due, as the plan takes it. */
export function DatesButton({ head }: { readonly head: BatchHead }) {
  return (
    <DialogButton label="Dates" title={`Dates of batch ${head.number}`}>
      <ActionForm action={saveBatchPlanningAction.bind(null, head.id)}>
        <TextField
          name="releaseOn"
          type="date"
          label="Not before"
          hint="The plan begins nothing of it earlier."
          isOptional
          defaultValue={head.releaseOn ?? undefined}
        />
        <TextField name="dueOn" type="date" label="Due on" isOptional defaultValue={head.dueOn ?? undefined} />
        <TextField
          name="weight"
          label="Weight"
          hint="What a day late costs beside other batches: 2 counts twice."
          inputMode="decimal"
          maxLength={6}
          defaultValue={plainDecimals(head.weight)}
        />
        <div>
          <SubmitButton>Save the dates</SubmitButton>
        </div>
      </ActionForm>
    </DialogButton>
  );
}
