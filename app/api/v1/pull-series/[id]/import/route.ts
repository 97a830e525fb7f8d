import { importPulls, intakeSeries } from '@/app/_commands/import-pulls';
import { isFromOwnPage } from '@/app/_server/caller';
import { now } from '@/app/_server/clock';
import { chosenPersonId } from '@/app/_server/device';
import { takenView, unreadView } from '@/app/_server/pull-file-view';
import { currentShop } from '@/app/_server/shop';
import type { PullFileView } from '@/app/pull-tests/_import/pull-file-view';
import { idSchema } from '@/lib/contracts/plain-text';
import { pullImportQuerySchema } from '@/lib/contracts/pull-forms';
import { MOST_PULL_BYTES, readPullFile } from '@/lib/exchange/pull-file';
import { pullIntake } from '@/lib/exchange/pull-intake';
import { db } from '@/prisma/client';
import { findPullSeries } from '@/prisma/data/pull-series';

/**
 * Reads a file of pulls, whose bytes are the body and whose answers stand after the question mark, and answers what its
 * rows are to the series; with `confirm=yes` it takes them in. Nothing is kept between the two: the browser sends the
 * file again.
 */
export async function POST(request: Request, { params }: { readonly params: Promise<{ readonly id: string }> }) {
  if (!isFromOwnPage(request.headers)) return refuse(403, 'Only a page of this app may send a file.');
  const id = idSchema.safeParse((await params).id);
  const query = pullImportQuerySchema.safeParse(Object.fromEntries(new URL(request.url).searchParams));
  if (!id.success || !query.success) return refuse(422, 'The answers cannot be read. Reload the page.');
  if (Number(request.headers.get('content-length') ?? 0) > MOST_PULL_BYTES) return refuse(413, TOO_LONG);
  const bytes = new Uint8Array(await request.arrayBuffer());
  if (bytes.length > MOST_PULL_BYTES) return refuse(413, TOO_LONG);
  const [database, shop, nowAt] = [await db(), await currentShop(), now()];
  const series = await findPullSeries(database, id.data);
  if (series === null) return refuse(404, 'This series is not there any more.');
  const { confirm, fileName, ...answers } = query.data;
  const result = readPullFile(bytes, shop.timeZone, answers);
  if (result.state !== 'read') return answer(unreadView(result));
  if (confirm !== 'yes') {
    return answer(takenView('preview', result, pullIntake(intakeSeries(series), result.rows, nowAt), shop));
  }
  const personId = await chosenPersonId();
  const taken = await importPulls(database, { seriesId: id.data, rows: result.rows, fileName, personId, now: nowAt });
  if (!taken.ok) return refuse(409, taken.message);
  return answer(takenView('done', result, taken.taken, shop));
}

const TOO_LONG = 'This file is too long for pulls. Cut it into one file a series.';
const HEADERS = { 'cache-control': 'no-store', 'x-content-type-options': 'nosniff' };

function answer(view: PullFileView, status = 200): Response {
  return Response.json(view, { status, headers: HEADERS });
}

function refuse(status: number, message: string): Response {
  return answer({ state: 'refused', message, firstLines: [] }, status);
}
