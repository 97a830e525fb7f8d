import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { readListQuery, type SearchParams } from '@/app/_server/list-query';
import { Page, Section } from '@/app/_ui/page';
import { SearchForm } from '@/app/_ui/search-form';
import { PART_WORDS } from '@/app/stock/_components/words';
import { db } from '@/prisma/client';
import { listLotPage } from '@/prisma/data/lots';

export const metadata: Metadata = { title: 'Trace' };

/** Lots shown for one search; more are found by a longer code. Chosen. */
const MOST_LOTS = 50;

/** From a lot to its pieces, or from a piece number to everything in it. */
export default async function TracePage({ searchParams }: { readonly searchParams: SearchParams }) {
  const { text } = await readListQuery(searchParams);
  const database = await db();
  const piece = /^#?(\d{1,9})\s*[-/. ]\s*(\d{1,4})$/.exec(text);
  const batch =
    piece === null
      ? null
      : await database.batch.findUnique({
          where: { number: Number(piece[1]) },
          select: { id: true, quantity: true, number: true },
        });
  if (batch !== null && Number(piece?.[2]) >= 1 && Number(piece?.[2]) <= batch.quantity) {
    redirect(`/batches/${batch.id}/pieces/${Number(piece?.[2])}`);
  }
  const search = { materialId: null, text, expiredBefore: null, page: 0, pageSize: MOST_LOTS };
  const { lots } = text === '' ? { lots: [] } : await listLotPage(database, search);
  return (
    <Page
      title="Trace"
      lead="Write a lot code to see every piece it went into, or a piece as batch and number, 22-7, to see what is in it."
      up={{ href: '/stock', label: 'Stock' }}
    >
      <SearchForm label="Lot code, or batch and piece" text={text} />
      {text !== '' && (
        <Section title="Lots">
          {lots.length === 0 ? (
            <p className="text-ink-soft">No lot and no piece of that name.</p>
          ) : (
            <ul className="grid gap-1">
              {lots.map((lot) => (
                <li key={lot.id}>
                  <Link
                    href={`/stock/${lot.materialId}/lots/${lot.id}/trace`}
                    prefetch={false}
                    className="inline-flex min-h-touch items-center underline underline-offset-4"
                  >
                    {lot.code}
                    {lot.part === 'whole' ? '' : `, ${PART_WORDS[lot.part]}`}: {lot.materialName}
                  </Link>
                </li>
              ))}
            </ul>
          )}
        </Section>
      )}
    </Page>
  );
}
