import type { Metadata } from 'next';
import Link from 'next/link';
import { now } from '@/app/_server/clock';
import { currentShop } from '@/app/_server/shop';
import { type OutlookLine, stockOutlook } from '@/app/_server/stock-outlook';
import { dayText } from '@/app/_ui/day-text';
import { Page, Section } from '@/app/_ui/page';
import { PrintButton } from '@/app/_ui/print-button';
import { StatusMark } from '@/app/_ui/status-mark';
import { type Column, Table } from '@/app/_ui/table';
import { PART_WORDS } from '@/app/stock/_components/words';
import { packsToBuy } from '@/lib/bom/purchase';
import { fromMilli } from '@/lib/stock/ledger';
import { stockText } from '@/lib/stock/stock-text';
import { HOUR_MS } from '@/lib/units/instant';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { addDays, wallTimeAt } from '@/lib/units/zoned-time';
import { db } from '@/prisma/client';

export const metadata: Metadata = { title: 'Shortages' };

/** What open batches still need, what of it is not there, from which day, and when to order. */
export default async function ShortagesPage() {
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const today = wallTimeAt(now(), shop.timeZone).day;
  const lines = await stockOutlook(database, today);
  const short = lines.filter((line) => line.outlook?.shortage != null).sort((a, b) => (dayOf(a) < dayOf(b) ? -1 : 1));
  const low = lines.filter((line) => !short.includes(line) && isLow(line));
  const unknown = lines.filter((line) => line.outlook === null);
  const enough = lines.filter(
    (line) => ![...short, ...low, ...unknown].includes(line) && (line.outlook?.reservedMilli ?? 0) > 0,
  );
  return (
    <Page
      title="Shortages"
      lead="Open batches take on the day of the accepted plan, or else on their due day, from what is still good then. A batch reserves its bill less what it took."
      up={{ href: '/stock', label: 'Stock' }}
      actions={<PrintButton />}
    >
      <Section title="Short" lead="The day is that of the first batch that does not get all of its need.">
        {short.length === 0 ? (
          <p className="text-ink-soft">Nothing: what is left is enough for all open batches.</p>
        ) : (
          <Table caption="Short" columns={shortColumns(today, shop)} rows={short} rowKey={keyOf} />
        )}
      </Section>
      {low.length > 0 && (
        <Section title="Time to order" lead="Enough for the open batches, and at its reorder point or below.">
          <Table caption="Time to order" columns={enoughColumns(shop)} rows={low} rowKey={keyOf} />
        </Section>
      )}
      {unknown.length > 0 && (
        <Section title="Not judged" lead="Their data sheets do not say how much is resin and how much hardener.">
          <ul>
            {unknown.map((line) => (
              <li key={keyOf(line)}>
                <MaterialLink line={line} />
              </li>
            ))}
          </ul>
        </Section>
      )}
      {enough.length > 0 && (
        <Section title="Reserved, and enough">
          <Table caption="Reserved, and enough" columns={enoughColumns(shop)} rows={enough} rowKey={keyOf} />
        </Section>
      )}
    </Page>
  );
}

const keyOf = ({ material, part, unit }: OutlookLine) => `${material.id}-${part}-${unit}`;
const dayOf = ({ outlook }: OutlookLine) => outlook?.shortage?.bitesOn ?? '9999-12-31';

function isLow({ material, unit, outlook }: OutlookLine): boolean {
  const { reorderPoint, stockUnit } = material;
  return (
    reorderPoint !== null && stockUnit === unit && outlook !== null && fromMilli(outlook.leftMilli) <= reorderPoint
  );
}

function MaterialLink({ line: { material, part } }: { readonly line: OutlookLine }) {
  return (
    <Link
      href={`/stock/${material.id}`}
      prefetch={false}
      className="inline-flex min-h-touch items-center underline underline-offset-4"
    >
      {material.name}
      {part === 'whole' ? '' : `, ${PART_WORDS[part]}`}
    </Link>
  );
}

function text({ unit }: OutlookLine, milli: number, units: UnitChoice) {
  return <span className="whitespace-nowrap">{stockText(fromMilli(milli), unit, units)}</span>;
}

function shortColumns(today: string, units: UnitChoice): readonly Column<OutlookLine>[] {
  return [
    { id: 'material', title: 'Material', cell: (line) => <MaterialLink line={line} /> },
    { id: 'day', title: 'Bites', cell: (line) => <Bites line={line} today={today} />, isLong: true },
    { id: 'left', title: 'Left', cell: (line) => text(line, line.outlook?.leftMilli ?? 0, units), isNumber: true },
    {
      id: 'reserved',
      title: 'Needed',
      cell: (line) => text(line, line.outlook?.reservedMilli ?? 0, units),
      isNumber: true,
    },
    {
      id: 'short',
      title: 'Short',
      cell: (line) => text(line, line.outlook?.shortage?.shortMilli ?? 0, units),
      isNumber: true,
    },
    { id: 'order', title: 'Order', cell: (line) => <OrderBy line={line} today={today} />, isLong: true },
    { id: 'ordered', title: 'Ordered', cell: (line) => orderedText(line, units), isLong: true },
  ];
}

function Bites({ line, today }: { readonly line: OutlookLine; readonly today: string }) {
  const shortage = line.outlook?.shortage;
  if (shortage == null) return null;
  const { bitesOn, first, expiresMilli } = shortage;
  return (
    <>
      {bitesOn === null ? (
        'on no day: the batch has no due day, '
      ) : bitesOn <= today ? (
        <>
          <StatusMark status="late">now</StatusMark>{' '}
        </>
      ) : (
        `${dayText(bitesOn)}, `
      )}
      <Link
        href={`/batches/${first.batchId}`}
        prefetch={false}
        className="inline-flex min-h-touch items-center underline underline-offset-4"
      >
        batch {first.batchNumber}
      </Link>
      {expiresMilli > 0 && '; some of what is left expires before'}
    </>
  );
}

function OrderBy({ line, today }: { readonly line: OutlookLine; readonly today: string }) {
  const { material, unit, part, outlook } = line;
  const shortage = outlook?.shortage;
  if (shortage == null) return null;
  const { packQuantity, leadTimeDays, stockUnit } = material;
  const isPackKnown = packQuantity !== null && packQuantity > 0 && stockUnit === unit && part === 'whole';
  const packs = isPackKnown ? packsToBuy(fromMilli(shortage.shortMilli), 0, packQuantity) : null;
  const what = packs === null ? '' : `${packs} ${packs === 1 ? 'pack' : 'packs'}`;
  if (leadTimeDays === null || shortage.bitesOn === null) return <>{what === '' ? '–' : what}</>;
  const by = addDays(shortage.bitesOn, -leadTimeDays);
  if (by >= today) return <>{[what, `by ${dayText(by)}`].filter((word) => word !== '').join(' ')}</>;
  return (
    <>
      {what} <StatusMark status="late">comes too late by {daysBetween(by, today)} days</StatusMark>
    </>
  );
}

/** What is ordered of the whole material, by the day it is expected on. */
function orderedText({ orders, unit }: OutlookLine, units: UnitChoice): string {
  const words = orders.map(
    ({ milli, expectedOn }) => `${stockText(fromMilli(milli), unit, units)} for ${dayText(expectedOn)}`,
  );
  return words.join('; ') || '–';
}

function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / (24 * HOUR_MS));
}

function enoughColumns(units: UnitChoice): readonly Column<OutlookLine>[] {
  return [
    { id: 'material', title: 'Material', cell: (line) => <MaterialLink line={line} /> },
    { id: 'left', title: 'Left', cell: (line) => text(line, line.outlook?.leftMilli ?? 0, units), isNumber: true },
    {
      id: 'reserved',
      title: 'Needed',
      cell: (line) => text(line, line.outlook?.reservedMilli ?? 0, units),
      isNumber: true,
    },
    {
      id: 'batches',
      title: 'By batch',
      cell: ({ needs }) => needs.map((need) => need.batchNumber).join(', ') || '–',
    },
  ];
}
