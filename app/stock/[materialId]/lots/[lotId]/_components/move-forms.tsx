import { randomUUID } from 'node:crypto';
import { ActionForm } from '@/app/_ui/action-form';
import { DialogButton } from '@/app/_ui/dialog-button';
import { QuantityField, TextField } from '@/app/_ui/field';
import { SelectField, type SelectOption } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { stockUnitSign } from '@/app/stock/_components/stock-unit-sign';
import { stockInput, stockText } from '@/lib/stock/stock-text';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { Lot } from '@/prisma/data/lots';
import type { StockMovement } from '@/prisma/data/stock';
import { correctAction, countAction, issueAction, receiveAction } from '../actions';

export interface MoveFormsProps {
  readonly lot: Lot;
  readonly units: UnitChoice;
  readonly currency: string;
  /** Batches that something can be taken for. */
  readonly batches: readonly SelectOption[];
}

/** Taking from a lot, counting it, and more of it coming in, each in its dialog. */
export function MoveForms({ lot, units, currency, batches }: MoveFormsProps) {
  const unit = stockUnitSign(lot.quantityUnit, units);
  const left = stockText(lot.left, lot.quantityUnit, units);
  return (
    <div className="flex flex-wrap gap-3">
      <DialogButton label="Take" title={`Take from lot ${lot.code}`} weight="primary">
        <ActionForm action={issueAction.bind(null, lot.id)}>
          <input type="hidden" name="key" value={randomUUID()} />
          <p>{left} left by the book.</p>
          <QuantityField name="milli" label="Taken" unit={unit} />
          <SelectField name="batchId" label="For batch" isOptional emptyLabel="none" options={batches} />
          <TextField name="reason" label="What for" hint="Needed without a batch." isOptional maxLength={200} />
          <details>
            <summary className="flex min-h-touch items-center font-semibold underline underline-offset-4">
              The count was wrong
            </summary>
            <QuantityField
              name="foundLeftMilli"
              label="Really left afterwards"
              hint="Look at what lies there once this is taken. The book is put right by a line of its own."
              isOptional
              unit={unit}
            />
          </details>
          <div>
            <SubmitButton>Write it down</SubmitButton>
          </div>
        </ActionForm>
      </DialogButton>
      <DialogButton label="Count" title={`Count lot ${lot.code}`}>
        <ActionForm action={countAction.bind(null, lot.id)}>
          <input type="hidden" name="key" value={randomUUID()} />
          <p>{left} left by the book. The difference is kept with your reason.</p>
          <QuantityField name="countedMilli" label="Lies there" unit={unit} />
          <TextField name="reason" label="Reason" hint="Stock-taking, spilt, dried out, lost." maxLength={200} />
          <div>
            <SubmitButton>Write it down</SubmitButton>
          </div>
        </ActionForm>
      </DialogButton>
      <DialogButton label="More came in" title={`More of lot ${lot.code}`}>
        <ActionForm action={receiveAction.bind(null, lot.id)}>
          <input type="hidden" name="key" value={randomUUID()} />
          <p>Only for the same lot code. Another code is another lot.</p>
          <QuantityField name="milli" label="Came in" unit={unit} />
          <QuantityField name="priceMinor" label="Paid for it" isOptional={lot.priceMinor === null} unit={currency} />
          <TextField name="reason" label="Note" isOptional maxLength={200} />
          <div>
            <SubmitButton>Write it down</SubmitButton>
          </div>
        </ActionForm>
      </DialogButton>
    </div>
  );
}

export interface CorrectFormProps {
  readonly lot: Lot;
  readonly movement: StockMovement;
  readonly units: UnitChoice;
}

/** Putting a receipt or an issue right. */
export function CorrectForm({ lot, movement, units }: CorrectFormProps) {
  const quantity = Math.abs(movement.quantity);
  return (
    <DialogButton label="Put right" title={`Put movement ${movement.order} right`} weight="quiet">
      <ActionForm action={correctAction.bind(null, lot.id, movement.id)}>
        <input type="hidden" name="key" value={randomUUID()} />
        <p>
          It says {stockText(quantity, lot.quantityUnit, units)}. It stays as it is; one more line makes up the
          difference.
        </p>
        <QuantityField
          name="insteadMilli"
          label="It should say"
          hint="0 when it did not happen."
          unit={stockUnitSign(lot.quantityUnit, units)}
          defaultValue={stockInput(quantity, lot.quantityUnit, units)}
        />
        <TextField name="reason" label="Reason" maxLength={200} />
        <div>
          <SubmitButton>Put it right</SubmitButton>
        </div>
      </ActionForm>
    </DialogButton>
  );
}
