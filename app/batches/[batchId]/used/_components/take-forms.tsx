import { randomUUID } from 'node:crypto';
import { ActionForm } from '@/app/_ui/action-form';
import { DialogButton } from '@/app/_ui/dialog-button';
import { QuantityField, TextField } from '@/app/_ui/field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { stockUnitSign } from '@/app/stock/_components/stock-unit-sign';
import { issueAction } from '@/app/stock/[materialId]/lots/[lotId]/actions';
import { stockInput, stockText } from '@/lib/stock/stock-text';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { Lot } from '@/prisma/data/lots';

export interface TakeFormsProps {
  readonly batchId: string;
  readonly materialName: string;
  /** What is still missing of it, in its unit. */
  readonly missing: number;
  /** Lots it may be taken from, the one to use first in front. */
  readonly lots: readonly Lot[];
  readonly units: UnitChoice;
}

/** Lots that are offered at once. Chosen: what is taken from is among the first. */
const MOST_OFFERED = 6;

/** Taking a material for a batch, from one of its lots. */
export function TakeForms({ batchId, materialName, missing, lots, units }: TakeFormsProps) {
  return (
    <DialogButton label="Take" title={`Take ${materialName}`}>
      <div className="grid gap-6">
        {lots.slice(0, MOST_OFFERED).map((lot) => (
          <ActionForm key={lot.id} action={issueAction.bind(null, lot.id)} className="grid gap-3">
            <input type="hidden" name="key" value={randomUUID()} />
            <input type="hidden" name="batchId" value={batchId} />
            <input type="hidden" name="reason" value="" />
            <p className="font-semibold">
              Lot {lot.code}: {stockText(lot.left, lot.quantityUnit, units)} left
            </p>
            <QuantityField
              name="milli"
              label={`Taken from ${lot.code}`}
              unit={stockUnitSign(lot.quantityUnit, units)}
              defaultValue={
                lot.part === 'whole' && missing > 0
                  ? stockInput(Math.min(missing, lot.left), lot.quantityUnit, units)
                  : undefined
              }
            />
            <details>
              <summary className="flex min-h-touch items-center font-semibold underline underline-offset-4">
                The count was wrong
              </summary>
              <TextField
                name="foundLeftMilli"
                label={`Really left of ${lot.code} afterwards`}
                isOptional
                maxLength={40}
              />
            </details>
            <div>
              <SubmitButton>Take from {lot.code}</SubmitButton>
            </div>
          </ActionForm>
        ))}
      </div>
    </DialogButton>
  );
}
