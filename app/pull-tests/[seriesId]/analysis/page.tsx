import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { readListQuery } from '@/app/_server/list-query';
import { analysedSeries } from '@/app/_server/pull-page';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page, Section } from '@/app/_ui/page';
import { AcceptanceVerdict } from '@/app/pull-tests/_analysis/acceptance-verdict';
import { ConditionAnalysis } from '@/app/pull-tests/_analysis/condition-analysis';
import { ConditionTable } from '@/app/pull-tests/_analysis/condition-table';
import { conditionComparisons } from '@/lib/pulltest/condition-comparison';
import { lengthText } from '@/lib/units/format-quantity';
import { db } from '@/prisma/client';
import { findPullSeries } from '@/prisma/data/pull-series';

export const metadata: Metadata = { title: 'What the pulls say' };

/** The analysis of a series. `?depth=` (mm) chooses where with and without are compared. */
export default async function AnalysisPage({ params, searchParams }: PageProps<'/pull-tests/[seriesId]/analysis'>) {
  const { seriesId } = await params;
  const { word } = await readListQuery(searchParams);
  const [database, shop] = [await db(), await currentShop()];
  const series = await findPullSeries(database, seriesId);
  if (series === null) notFound();
  const base = `/pull-tests/${seriesId}`;
  const asked = Number(word('depth'));
  const depthMm = series.plan.depthsMm.find((depth) => Math.abs(depth - asked) < 0.05) ?? null;
  const analysed = await analysedSeries(database, series, depthMm);
  const comparisons = conditionComparisons(analysed.records, series.plan.question);
  return (
    <Page
      title={`What “${series.name}” says`}
      up={{ href: base, label: series.name }}
      actions={
        <>
          <ButtonLink href={`${base}/report`}>Report to print</ButtonLink>
          <ButtonLink href={`${base}/accept`} weight="primary">
            Accept…
          </ButtonLink>
        </>
      }
    >
      {analysed.analyses.length === 0 && (
        <EmptyState
          title="No pull is written down yet"
          action={<ButtonLink href={base}>Go to the specimens</ButtonLink>}
        >
          <p>Once three mixes of several depths are pulled, the answer stands here with its limits.</p>
        </EmptyState>
      )}
      {series.kind === 'acceptance' && (
        <Section title="Accept or hold">
          <AcceptanceVerdict series={series} judged={analysed.analyses.flatMap(({ pulls }) => pulls)} units={shop} />
        </Section>
      )}
      {series.plan.depthsMm.length > 1 && analysed.analyses.length > 0 && (
        <nav aria-label="Depth of comparison" className="flex flex-wrap items-center gap-2">
          <span className="text-ink-soft">Compare at</span>
          {series.plan.depthsMm.map((depth) => (
            <ButtonLink
              key={depth}
              href={`${base}/analysis?depth=${depth}`}
              weight={depth === depthMm ? 'primary' : 'plain'}
            >
              {lengthText(depth, shop.lengthUnit)}
            </ButtonLink>
          ))}
        </nav>
      )}
      {comparisons.length > 0 && (
        <Section title="Against each other" lead="At the depths that both were pulled at.">
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
