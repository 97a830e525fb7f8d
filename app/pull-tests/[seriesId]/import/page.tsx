import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { Page } from '@/app/_ui/page';
import { PullFileDesk } from '@/app/pull-tests/_import/pull-file-desk';
import { db } from '@/prisma/client';
import { findPullSeries } from '@/prisma/data/pull-series';

export const metadata: Metadata = { title: 'Take in a file of pulls' };

export default async function ImportPullsPage({ params }: PageProps<'/pull-tests/[seriesId]/import'>) {
  const { seriesId } = await params;
  const series = await findPullSeries(await db(), seriesId);
  if (series === null) notFound();
  return (
    <Page
      title="Take in a file of pulls"
      lead="A table saved as text: one row a pull, with its specimen (or mix and depth), load and how it ended. Save the series as a file to have one to fill in."
      up={{ href: `/pull-tests/${seriesId}`, label: series.name }}
    >
      <PullFileDesk seriesId={seriesId} />
    </Page>
  );
}
