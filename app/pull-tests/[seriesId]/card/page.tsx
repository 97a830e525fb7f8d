import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { plannedLayout } from '@/app/_server/pull-kit';
import { currentShop } from '@/app/_server/shop';
import { Page } from '@/app/_ui/page';
import { PrintButton } from '@/app/_ui/print-button';
import { PullCautions } from '@/app/pull-tests/_components/pull-cautions';
import { forceText } from '@/lib/units/format-quantity';
import { db } from '@/prisma/client';
import { findPullSeries } from '@/prisma/data/pull-series';
import { CardTable } from './_components/card-table';
import { CouponMap } from './_components/coupon-map';
import { KitList } from './_components/kit-list';

export const metadata: Metadata = { title: 'Test card' };

/** The card that goes to the scale: what to make, where each specimen stands, and boxes to write in, in the order of pulling. */
export default async function CardPage({ params }: PageProps<'/pull-tests/[seriesId]/card'>) {
  const { seriesId } = await params;
  const [database, shop] = [await db(), await currentShop()];
  const series = await findPullSeries(database, seriesId);
  if (series === null) notFound();
  const { plan, specimens, mixes, name } = series;
  const layout = plannedLayout(series);
  const demand = plan.goal.demandN === null ? '' : ` Asked: ${forceText(plan.goal.demandN, shop.forceUnit)}.`;
  return (
    <Page
      title={`Test card: ${name}`}
      lead={`${plan.conditions.map((condition) => condition.name).join('; ')}. ${specimens.length} specimens of ${mixes.length} mixes. Order drawn from the seed ${plan.seed}.${demand}`}
      up={{ href: `/pull-tests/${seriesId}`, label: name }}
      actions={<PrintButton />}
    >
      <div className="grid gap-6 text-sm">
        {series.kind === 'design' && <KitList series={series} shop={shop} />}
        {layout !== null && <CouponMap layout={layout} series={series} units={shop} />}
        <PullCautions step="setting-up" />
        <PullCautions step="pulling" />
        <CardTable series={series} units={shop} />
        <PullCautions step="after" />
      </div>
    </Page>
  );
}
