import { recallOfLot } from '@/app/_server/recall';
import { csvText } from '@/lib/exchange/csv-text';
import { db } from '@/prisma/client';
import { findLot } from '@/prisma/data/lots';

const HEADINGS = ['lot', 'part', 'material', 'batch', 'piece', 'model', 'revision', 'order', 'where', 'state', 'pulls'];

/** The recall list of a lot as a file. */
export async function GET(
  _: Request,
  { params }: { readonly params: Promise<{ materialId: string; lotId: string }> },
): Promise<Response> {
  const { materialId, lotId } = await params;
  const database = await db();
  const lot = await findLot(database, lotId);
  if (lot === null || lot.materialId !== materialId) return new Response('No such lot.', { status: 404 });
  const { pieces, pulls } = await recallOfLot(database, lot);
  const rows = pieces.map(({ batch, number, orderNumber, places, isScrapped, mixIds }) => [
    lot.code,
    lot.part,
    lot.materialName,
    batch.number,
    number,
    batch.modelName,
    batch.letter,
    orderNumber,
    places.length === 0 ? 'whole batch' : places.join('; '),
    isScrapped ? 'scrapped' : batch.status,
    pulls
      .filter(
        ({ piece, mixId }) =>
          (piece?.batchId === batch.id && piece.number === number) || (mixId !== null && mixIds.includes(mixId)),
      )
      .map((pull) => `${pull.seriesName} ${pull.specimen}`)
      .join('; '),
  ]);
  const name = `recall-${lot.code.replace(/[^A-Za-z0-9-]+/g, '-')}.csv`;
  return new Response(csvText([HEADINGS, ...rows]), {
    headers: {
      'content-type': 'text/csv; charset=utf-8',
      'content-disposition': `attachment; filename="${name}"`,
      'cache-control': 'no-store',
      'x-content-type-options': 'nosniff',
    },
  });
}
