import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { BatchStatusButton } from '@/app/_bench/batch-status-button';
import { BenchProvider } from '@/app/_bench/bench-context';
import { ActionList, HeldList } from '@/app/_bench/bench-lists';
import { BenchSync } from '@/app/_bench/bench-sync';
import { batchRef } from '@/app/_bench/operation-buttons';
import { PieceReportButton } from '@/app/_bench/piece-report-button';
import { QuarantineList } from '@/app/_bench/quarantine-list';
import { reportBatch } from '@/app/_bench/report-batch';
import { RunningMixes } from '@/app/_bench/running-mixes';
import { loadBatchPage } from '@/app/_server/batch-page';
import type { BenchEntry } from '@/app/_server/bench';
import { loadBenchWorld } from '@/app/_server/bench-world';
import { now } from '@/app/_server/clock';
import { hrefWith, readListQuery } from '@/app/_server/list-query';
import { currentPeople, currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { dayText } from '@/app/_ui/day-text';
import { Page, Section } from '@/app/_ui/page';
import { StatusMark } from '@/app/_ui/status-mark';
import { db } from '@/prisma/client';
import { listLotCodes } from '@/prisma/data/mix-materials';
import { BatchFindings } from '../_components/batch-findings';
import { Clocks } from '../_components/clocks';
import { DatesButton } from '../_components/dates-button';
import { History } from '../_components/history';
import { MixTable } from '../_components/mix-table';
import { PieceGrid } from '../_components/piece-grid';

export async function generateMetadata({ params }: PageProps<'/batches/[batchId]'>): Promise<Metadata> {
  const { batchId } = await params;
  const head = await (await db()).batch.findUnique({ where: { id: batchId }, select: { number: true } });
  return { title: head === null ? 'Batch' : `Batch ${head.number}` };
}

/** One batch: what is next, its pieces, its clocks, its mixes, its history. */
export default async function BatchPage({ params, searchParams }: PageProps<'/batches/[batchId]'>) {
  const { batchId } = await params;
  const { page, word } = await readListQuery(searchParams);
  const nowAt = now();
  const database = await db();
  const shop = await currentShop();
  const loaded = await loadBatchPage(database, shop, batchId, nowAt);
  if (loaded === null) notFound();
  const { entry, bench, course } = loaded;
  const { head, batch } = entry;
  const [world, people] = [await loadBenchWorld(database, shop, [entry], nowAt), await currentPeople()];
  const lotCodes = await listLotCodes(
    database,
    batch.state.mixes.flatMap((mix) => mix.lotIds),
  );
  const names = new Map(people.map(({ id, name }) => [id, name]));
  const href = (words: Readonly<Record<string, string>>) =>
    hrefWith(`/batches/${batchId}`, { span: word('span'), ...words });
  const isOpen = head.status === 'open';
  return (
    <BenchProvider world={world}>
      <BenchSync version={bench.version} changesAt={bench.changesAt} />
      <Page
        title={`Batch ${head.number}`}
        lead={leadText(entry)}
        up={{ href: '/batches', label: 'Batches' }}
        actions={
          <>
            {isOpen && <DatesButton head={head} />}
            {isOpen && <PieceReportButton kind="scrap" batches={[reportBatch(entry)]} />}
            <ButtonLink href={`/batches/${batchId}/prepare`}>Prepare</ButtonLink>
            <ButtonLink href={`/batches/${batchId}/used`}>Used</ButtonLink>
            <PieceReportButton kind="note" batches={[reportBatch(entry)]} />
            <ButtonLink href={`/pull-tests/acceptance?batch=${head.id}`}>Test a sample</ButtonLink>
            <BatchStatusButton batch={batchRef(entry)} isFinished={!isOpen} />
          </>
        }
      >
        {word('opened') === 'frozen' && (
          <p className="border-l-4 border-ink bg-well px-4 py-3">
            Revision {head.letter} was a draft. It is frozen now, because this batch is made of it; changes go into the
            next revision.
          </p>
        )}
        {!isOpen && (
          <p>
            <StatusMark status="done">Finished</StatusMark>
          </p>
        )}
        <RunningMixes bench={bench} shop={shop} />
        <QuarantineList entries={[entry]} />
        {isOpen && (
          <div className="grid gap-8 lg:grid-cols-2">
            <Section title="Now">
              <ActionList bench={bench} />
            </Section>
            <Section title="Not yet">
              <HeldList bench={bench} />
            </Section>
          </div>
        )}
        <Section title="Pieces">
          <PieceGrid entry={entry} />
        </Section>
        <Clocks
          entry={entry}
          course={course}
          shop={shop}
          nowAt={nowAt}
          spanWord={word('span')}
          hrefOf={(span) => href({ span })}
        />
        <BatchFindings batchId={batchId} revisionId={head.revisionId} modelId={head.modelId} shop={shop} />
        <Section title="Mixes">
          <MixTable entry={entry} shop={shop} lotCodes={lotCodes} />
        </Section>
        <Section title="History" id="history" lead="Nothing is deleted: a correction is one more entry.">
          <History
            entry={entry}
            nameOf={(id) => names.get(id ?? '') ?? null}
            page={page}
            hrefOf={(to) => href({ page: to === 1 ? '' : String(to) })}
          />
        </Section>
      </Page>
    </BenchProvider>
  );
}

function leadText({ head, batch }: BenchEntry): string {
  const { donePieces, livePieces } = batch.evaluation;
  const scrapped = head.quantity - livePieces;
  return [
    `${head.modelName}, revision ${head.letter}.`,
    `${donePieces} of ${livePieces} pieces done${scrapped > 0 ? `, ${scrapped} scrapped` : ''}.`,
    head.dueOn === null ? '' : `Due ${dayText(head.dueOn)}.`,
    head.orderNote,
  ]
    .filter((part) => part !== '')
    .join(' ');
}
