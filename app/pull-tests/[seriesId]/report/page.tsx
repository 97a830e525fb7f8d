import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { analysedSeries } from '@/app/_server/pull-page';
import { currentShop } from '@/app/_server/shop';
import { Page, Section } from '@/app/_ui/page';
import { PrintButton } from '@/app/_ui/print-button';
import { type Column, Table } from '@/app/_ui/table';
import { ConditionAnalysis } from '@/app/pull-tests/_analysis/condition-analysis';
import { ConditionTable } from '@/app/pull-tests/_analysis/condition-table';
import { conditionComparisons } from '@/lib/pulltest/condition-comparison';
import { dateClockText, dateText } from '@/lib/units/format-instant';
import { db } from '@/prisma/client';
import { findPullSeries, type SeriesMix } from '@/prisma/data/pull-series';

export const metadata: Metadata = { title: 'Report' };

/** All of a series on paper: how it was made, what was read, what it says and where that ends. */
export default async function ReportPage({ params }: PageProps<'/pull-tests/[seriesId]/report'>) {
  const { seriesId } = await params;
  const [database, shop] = [await db(), await currentShop()];
  const series = await findPullSeries(database, seriesId);
  if (series === null) notFound();
  const analysed = await analysedSeries(database, series);
  const comparisons = conditionComparisons(analysed.records, series.plan.question);
  const scales = [...new Set(series.pulls.flatMap(({ scale }) => scale?.name ?? []))];
  return (
    <Page
      title={`Pull tests: ${series.name}`}
      lead={`${shop.name}, ${dateText(now(), shop.timeZone)}. An estimate for joints made like these, never a rating.`}
      up={{ href: `/pull-tests/${seriesId}/analysis`, label: `What “${series.name}” says` }}
      actions={<PrintButton />}
    >
      <Section title="How it was made">
        <ul className="max-w-3xl list-disc pl-5">
          <li>{series.plan.conditions.map(({ name }) => name).join('; ')}</li>
          <li>
            {series.specimens.length} specimens in {series.mixes.length} mixes; order of pulling drawn from the seed{' '}
            {series.plan.seed}.
          </li>
          <li>{scales.length === 0 ? 'The scale was not named.' : `Read on ${scales.join(', ')}.`}</li>
          {series.note !== '' && <li>{series.note}</li>}
        </ul>
        <Table caption="Mixes" columns={mixColumns(shop.timeZone)} rows={series.mixes} rowKey={({ id }) => id} />
      </Section>
      {comparisons.length > 0 && (
        <Section title="Against each other">
          <ConditionTable comparisons={comparisons} />
        </Section>
      )}
      {analysed.analyses.map((analysis) => (
        <ConditionAnalysis
          key={analysis.condition}
          analysis={analysis}
          goal={analysed.goal}
          words={analysed.words}
          mixes={series.mixes}
          units={shop}
          isAlone={analysed.analyses.length === 1}
        />
      ))}
    </Page>
  );
}

function mixColumns(zone: string): readonly Column<SeriesMix>[] {
  const when = (at: number | null) => (at === null ? 'not written down' : dateClockText(at, zone));
  return [
    { id: 'name', title: 'Mix', cell: ({ name }) => name },
    { id: 'mixed', title: 'Mixed', cell: ({ mixedAt }) => when(mixedAt) },
    { id: 'set', title: 'Last one set', cell: ({ setAt, mixedAt }) => when(setAt ?? mixedAt) },
    { id: 'lot', title: 'Lot', cell: ({ adhesiveLotCode }) => adhesiveLotCode || '–' },
    { id: 'note', title: 'Note', isLong: true, cell: ({ note }) => note || '–' },
  ];
}
