import { ActionForm } from '@/app/_ui/action-form';
import { TextAreaField, TextField } from '@/app/_ui/field';
import type { FormAction } from '@/app/_ui/form-state';
import { Card } from '@/app/_ui/page';
import { SelectField } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { lengthSign } from '@/app/_ui/unit-sign';
import { lengthInput, massInput } from '@/lib/units/quantity-input';
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
  readonly action: FormAction;
}

/** What is written on a container, and when it came, was opened and expires. */
export function LotForm({ material, lot, today, units, action }: LotFormProps) {
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
            <TextField name="quantity" label="Bought" maxLength={40} defaultValue={quantityInput(lot, units)} />
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
          hint="Where it came from, what it cost, what you noticed."
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

function quantityInput(lot: Lot | null, units: UnitChoice): string | undefined {
  if (lot === null) return undefined;
  switch (lot.quantityUnit) {
    case 'g':
      return massInput(lot.quantity, units.massUnit);
    case 'mm':
      return lengthInput(lot.quantity, units.lengthUnit);
    case 'pieces':
      return String(lot.quantity);
  }
}
