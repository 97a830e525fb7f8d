import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { now } from '@/app/_server/clock';
import { readListQuery, type SearchParams } from '@/app/_server/list-query';
import { currentShop } from '@/app/_server/shop';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page, Section } from '@/app/_ui/page';
import { FindingChanges } from '@/app/models/_components/finding-changes';
import { tallyText } from '@/app/models/_components/finding-status';
import { StrengthCaution } from '@/app/models/_components/strength-caution';
import { findingChanges } from '@/lib/spec/finding-changes';
import { db } from '@/prisma/client';
import { findModel, type Model, type RevisionHead } from '@/prisma/data/models';
import { findRevision } from '@/prisma/data/revisions';
import { judgeRevisions } from '@/prisma/data/spec-reports';
import { CompareChoice } from './_components/compare-choice';
import { CompareTable } from './_components/compare-table';

export const metadata: Metadata = { title: 'Compare revisions' };

interface ComparePageProps {
  readonly params: Promise<{ modelId: string }>;
  readonly searchParams: SearchParams;
}

/** Two revisions of a model side by side: what was changed, and what is found otherwise for it. */
export default async function ComparePage({ params, searchParams }: ComparePageProps) {
  const [{ modelId }, { word }, database, units] = await Promise.all([
    params,
    readListQuery(searchParams),
    db(),
    currentShop(),
  ]);
  const model = await findModel(database, modelId);
  if (model === null) notFound();
  const pair = chosenPair(model, word('from'), word('to'));
  if (pair === null) {
    return (
      <Page title={`Revisions of ${model.name}`} up={{ href: `/models/${modelId}`, label: model.name }}>
        <EmptyState title="There is only one revision yet">
          <p>Freeze it and revise the model: the two can then be compared here.</p>
        </EmptyState>
      </Page>
    );
  }
  const [from, to] = await Promise.all([findRevision(database, pair.from.id), findRevision(database, pair.to.id)]);
  if (from === null || to === null) notFound();
  const reports = await judgeRevisions(database, [from.id, to.id], now());
  const findingsOf = (id: string) => reports.find(({ revisionId }) => revisionId === id)?.findings ?? [];
  const changes = findingChanges(findingsOf(from.id), findingsOf(to.id), ({ name }) => name);
  return (
    <Page
      title={`${model.name}, ${from.letter} and ${to.letter}`}
      lead="Both judged by the rules of today. Anchors are held against those of the same name."
      up={{ href: `/models/${modelId}`, label: model.name }}
    >
      <CompareChoice model={model} from={from.letter} to={to.letter} />
      <StrengthCaution />
      <Section
        title="Findings"
        lead={`${from.letter}: ${tallyText(findingsOf(from.id))}. ${to.letter}: ${tallyText(findingsOf(to.id))}.`}
      >
        {changes.length === 0 ? (
          <p className="text-ink-soft">The rules find the same of both.</p>
        ) : (
          <FindingChanges changes={changes} units={units} />
        )}
      </Section>
      <Section title="Body, line and anchors" lead="Only what differs is marked.">
        <CompareTable from={from} to={to} units={units} />
      </Section>
    </Page>
  );
}

/** The two revisions asked for; else the two newest, the older first. Null when there are no two. */
function chosenPair(
  { revisions }: Model,
  fromLetter: string,
  toLetter: string,
): { readonly from: RevisionHead; readonly to: RevisionHead } | null {
  const find = (letter: string) => revisions.find((revision) => revision.letter === letter);
  const to = find(toLetter) ?? revisions[0];
  const from = find(fromLetter) ?? revisions.find((revision) => revision !== to);
  return from === undefined || to === undefined || from === to ? null : { from, to };
}
