import { pullRowsOf } from '@/app/_server/pull-rows';
import { currentShop } from '@/app/_server/shop';
import { idSchema } from '@/lib/contracts/plain-text';
import { pullCsv } from '@/lib/exchange/pull-csv';
import { db } from '@/prisma/client';
import { findPullSeries } from '@/prisma/data/pull-series';

/** The readings of a series as a file that spreadsheets open and that can be taken in again. 404 for no such series. */
export async function GET(_: Request, { params }: { readonly params: Promise<{ readonly id: string }> }) {
  const id = idSchema.safeParse((await params).id);
  const series = id.success ? await findPullSeries(await db(), id.data) : null;
  if (series === null) return Response.json({ ok: false, message: 'There is no such series.' }, { status: 404 });
  const { lengthUnit, forceUnit } = await currentShop();
  const name =
    series.name
      .replace(/[^A-Za-z0-9]+/g, '-')
      .replace(/^-|-$/g, '')
      .toLowerCase() || 'pulls';
  return new Response(pullCsv(pullRowsOf(series), lengthUnit, forceUnit), {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': `attachment; filename="${name}.csv"`,
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
    },
  });
}
