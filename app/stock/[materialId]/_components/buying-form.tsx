import { ActionForm } from '@/app/_ui/action-form';
import { QuantityField, TextField } from '@/app/_ui/field';
import { Card } from '@/app/_ui/page';
import { SelectField } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { stockUnitSign } from '@/app/stock/_components/stock-unit-sign';
import { usualStockUnit } from '@/app/stock/_components/usual-stock-unit';
import { STOCK_UNITS } from '@/lib/stock/ledger';
import { stockInput } from '@/lib/stock/stock-text';
import { moneyInput } from '@/lib/units/money';
import type { Material } from '@/prisma/data/materials';
import type { ShopSettings } from '@/prisma/data/shop';
import { saveBuyingAction } from '../actions';

/** Pack, price, reorder point and lead time of a material. */
export function BuyingForm({ material, shop }: { readonly material: Material; readonly shop: ShopSettings }) {
  const { packQuantity, packPriceMinor, reorderPoint, leadTimeDays } = material.buying;
  const unit = material.buying.stockUnit ?? usualStockUnit(material.kind);
  const typed = (quantity: number | null) => (quantity === null ? undefined : stockInput(quantity, unit, shop));
  return (
    <Card className="max-w-3xl">
      <ActionForm action={saveBuyingAction.bind(null, material.id)}>
        <div className="grid gap-5 sm:grid-cols-2">
          <SelectField
            name="stockUnit"
            label="Counted in"
            options={STOCK_UNITS.map((value) => ({ value, label: stockUnitSign(value, shop) }))}
            defaultValue={unit}
          />
          <TextField
            name="packQuantity"
            label="One pack holds"
            hint="Both parts of a glue together."
            isOptional
            maxLength={40}
            defaultValue={typed(packQuantity)}
          />
          <QuantityField
            name="packPriceMinor"
            label="One pack costs"
            isOptional
            unit={shop.currency}
            defaultValue={packPriceMinor === null ? undefined : moneyInput(packPriceMinor, shop.currency)}
          />
          <TextField
            name="reorderPoint"
            label="Order when left"
            hint="Order when no more than this is left."
            isOptional
            maxLength={40}
            defaultValue={typed(reorderPoint)}
          />
          <TextField
            name="leadTimeDays"
            label="Days until it comes"
            inputMode="numeric"
            isOptional
            maxLength={3}
            defaultValue={leadTimeDays === null ? undefined : String(leadTimeDays)}
          />
        </div>
        <div>
          <SubmitButton>Save how it is bought</SubmitButton>
        </div>
      </ActionForm>
    </Card>
  );
}
