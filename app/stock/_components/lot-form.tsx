import { ActionForm } from '@/app/_ui/action-form';
import { QuantityField, TextAreaField, TextField } from '@/app/_ui/field';
import type { FormAction } from '@/app/_ui/form-state';
import { Card } from '@/app/_ui/page';
import { SelectField } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { lengthSign } from '@/app/_ui/unit-sign';
import { stockInput } from '@/lib/stock/stock-text';
import { moneyInput } from '@/lib/units/money';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { Lot } from '@/prisma/data/lots';
import { hasSheet, type Material } from '@/prisma/data/materials';
import { PART_WORDS } from './words';

export interface LotFormProps {
  readonly material: Material;
  /** Null: a new one. */
  readonly lot: Lot | null;
  /** YYYY-MM-DD in the shop. */
  readonly today: string;
  readonly units: UnitChoice;
  /** ISO 4217 code. */
  readonly currency: string;
  readonly action: FormAction;
}

/** What is written on a container, and when it came, was opened and expires. */
export function LotForm({ material, lot, today, units, currency, action }: LotFormProps) {
  const isTwoPart = hasSheet(material.kind);
  return (
    <Card className="max-w-3xl">
      <ActionForm action={action}>
        <div className="grid gap-5 sm:grid-cols-2">
          <TextField
            name="code"
            label="Lot code"
            hint="As printed on the container, or your own mark."
            maxLength={60}
            defaultValue={lot?.code}
          />
          {isTwoPart ? (
            <SelectField
              name="part"
              label="What is in it"
              options={Object.entries(PART_WORDS).map(([value, label]) => ({ value, label }))}
              defaultValue={lot?.part ?? (material.sheet?.ratio === undefined ? 'whole' : 'resin')}
            />
          ) : (
            <input type="hidden" name="part" value="whole" />
          )}
          <div className="grid grid-cols-[2fr_1fr] gap-3">
            <TextField
              name="quantity"
              label="Bought"
              maxLength={40}
              defaultValue={lot === null ? undefined : stockInput(lot.quantity, lot.quantityUnit, units)}
            />
            <SelectField
              name="unit"
              label="Unit"
              options={[
                { value: 'g', label: units.massUnit },
                { value: 'mm', label: lengthSign(units.lengthUnit) },
                { value: 'pieces', label: 'pieces' },
              ]}
              defaultValue={lot?.quantityUnit ?? (isTwoPart ? 'g' : 'pieces')}
            />
          </div>
          <QuantityField
            name="priceMinor"
            label="Paid for it"
            hint="All of it together. Empty when you do not know: its cost is then not judged."
            isOptional
            unit={currency}
            defaultValue={lot?.priceMinor == null ? undefined : moneyInput(lot.priceMinor, currency)}
          />
          <TextField name="receivedOn" type="date" label="Received" defaultValue={lot?.receivedOn ?? today} />
          <TextField
            name="openedOn"
            type="date"
            label="Opened"
            hint="Empty while it is shut."
            isOptional
            defaultValue={lot?.openedOn ?? undefined}
          />
          <TextField
            name="expiresOn"
            type="date"
            label="Good until"
            hint="The last good day, as printed or as the data sheet says."
            isOptional
            defaultValue={lot?.expiresOn ?? undefined}
          />
        </div>
        <TextAreaField
          name="supplierNote"
          label="Note"
          hint="Where it came from, what you noticed."
          isOptional
          maxLength={500}
          defaultValue={lot?.supplierNote}
        />
        <div>
          <SubmitButton>{lot === null ? 'Add the lot' : 'Save the lot'}</SubmitButton>
        </div>
      </ActionForm>
    </Card>
  );
}
