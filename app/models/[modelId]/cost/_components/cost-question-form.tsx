import { ActionForm } from '@/app/_ui/action-form';
import { buttonClass } from '@/app/_ui/button-class';
import { QuantityField } from '@/app/_ui/field';
import { inputClass } from '@/app/_ui/input-class';
import { SubmitButton } from '@/app/_ui/submit-button';
import { moneyInput } from '@/lib/units/money';
import { plainDecimals } from '@/lib/units/quantity-input';
import type { CostRates } from '@/prisma/data/cost-rates';
import { saveCostRatesAction } from '../actions';

export interface CostQuestionFormProps {
  readonly letter: string;
  readonly pieces: number;
  readonly scrapPercent: number;
}

/** Of how many good pieces, and how many are spoilt: asked in the address, nothing is kept. */
export function CostQuestionForm({ letter, pieces, scrapPercent }: CostQuestionFormProps) {
  const fields = [
    { name: 'pieces', label: 'Good pieces', value: String(pieces) },
    { name: 'scrap', label: 'Spoilt, %', value: plainDecimals(scrapPercent) },
  ];
  return (
    <form className="flex flex-wrap items-end gap-3 print:hidden">
      <input type="hidden" name="revision" value={letter} />
      {fields.map(({ name, label, value }) => (
        <label key={name} className="grid w-32 gap-1.5">
          <span className="font-semibold">{label}</span>
          <input name={name} defaultValue={value} inputMode="decimal" maxLength={6} className={inputClass} />
        </label>
      ))}
      <button type="submit" className={buttonClass('plain')}>
        Work out
      </button>
    </form>
  );
}

/** The shop's hourly rate and margin. */
export function CostRatesForm({ rates, currency }: { readonly rates: CostRates; readonly currency: string }) {
  const { labourPerHourMinor, marginShare } = rates;
  return (
    <ActionForm action={saveCostRatesAction}>
      <div className="grid gap-5 sm:grid-cols-2">
        <QuantityField
          name="labourPerHourMinor"
          label="An hour of work costs"
          isOptional
          unit={currency}
          defaultValue={labourPerHourMinor === null ? undefined : moneyInput(labourPerHourMinor, currency)}
        />
        <QuantityField
          name="marginShare"
          label="To remain of the price"
          hint="After the cost, in per cent of the price."
          isOptional
          unit="%"
          defaultValue={marginShare === null ? undefined : plainDecimals(marginShare * 100)}
        />
      </div>
      <div>
        <SubmitButton>Save for all models</SubmitButton>
      </div>
    </ActionForm>
  );
}
