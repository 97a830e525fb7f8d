import { ActionForm } from '@/app/_ui/action-form';
import { dayText } from '@/app/_ui/day-text';
import { TextField } from '@/app/_ui/field';
import { StatusMark } from '@/app/_ui/status-mark';
import { SubmitButton } from '@/app/_ui/submit-button';
import { Table } from '@/app/_ui/table';
import { stockUnitSign } from '@/app/stock/_components/stock-unit-sign';
import { usualStockUnit } from '@/app/stock/_components/usual-stock-unit';
import { fromMilli } from '@/lib/stock/ledger';
import { stockText } from '@/lib/stock/stock-text';
import type { Material } from '@/prisma/data/materials';
import type { ShopSettings } from '@/prisma/data/shop';
import type { StockOrder } from '@/prisma/data/stock-orders';
import { addStockOrderAction, removeStockOrderAction } from '../actions';

interface OrderListProps {
  readonly material: Material;
  readonly orders: readonly StockOrder[];
  /** YYYY-MM-DD in the shop. */
  readonly today: string;
  readonly shop: ShopSettings;
}

/** What is ordered of a material and when it is expected, and a form for one more. */
export function OrderList({ material, orders, today, shop }: OrderListProps) {
  const unit = material.buying.stockUnit ?? usualStockUnit(material.kind);
  return (
    <div className="grid gap-5">
      {orders.length === 0 ? (
        <p className="text-ink-soft">Nothing.</p>
      ) : (
        <Table
          caption="Ordered"
          rows={orders}
          rowKey={({ id }) => id}
          columns={[
            { id: 'day', title: 'Expected', cell: (order) => <Expected order={order} today={today} />, isLong: true },
            {
              id: 'quantity',
              title: 'How much',
              cell: (order) => stockText(fromMilli(order.milli), order.unit, shop),
              isNumber: true,
            },
            { id: 'note', title: 'Note', cell: ({ note }) => note || '–' },
            {
              id: 'remove',
              title: 'Came or called off',
              cell: (order) => (
                <ActionForm action={removeStockOrderAction.bind(null, order.id)} className="grid">
                  <SubmitButton weight="quiet" pendingText="…" label={`Take out ${dayText(order.expectedOn)}`}>
                    Take out
                  </SubmitButton>
                </ActionForm>
              ),
            },
          ]}
        />
      )}
      <ActionForm action={addStockOrderAction.bind(null, material.id, unit)} clearsWhenDone>
        <div className="grid items-start gap-4 sm:grid-cols-3">
          <TextField
            name="milli"
            label={`How much (${stockUnitSign(unit, shop)})`}
            hint="Both parts of a glue together."
            maxLength={40}
          />
          <TextField
            name="expectedOn"
            type="date"
            label="Expected on"
            hint="The plan counts on it from the day after."
            defaultValue={today}
          />
          <TextField name="note" label="Note" hint="Where it was ordered." maxLength={120} isOptional />
        </div>
        <div>
          <SubmitButton weight="plain">Add this order</SubmitButton>
        </div>
      </ActionForm>
    </div>
  );
}

function Expected({ order, today }: { readonly order: StockOrder; readonly today: string }) {
  const { expectedOn } = order;
  return (
    <>
      {dayText(expectedOn)} {expectedOn < today && <StatusMark status="late">has not come</StatusMark>}
    </>
  );
}
