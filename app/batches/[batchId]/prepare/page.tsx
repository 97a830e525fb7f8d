import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { loadBatchCost } from '@/app/_server/batch-cost';
import { roomNow } from '@/app/_server/bench-world';
import { now } from '@/app/_server/clock';
import { loadPreparePage } from '@/app/_server/prepare-page';
import { currentShop } from '@/app/_server/shop';
import { stockOutlook } from '@/app/_server/stock-outlook';
import { ButtonLink } from '@/app/_ui/button-link';
import { Caution } from '@/app/_ui/caution';
import { Page, Section } from '@/app/_ui/page';
import { USUAL_CHOICES } from '@/lib/prepare/preparation';
import { whenText } from '@/lib/units/format-instant';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { db } from '@/prisma/client';
import { CardAndCuts } from './_components/card-and-cuts';
import { PickList } from './_components/pick-list';
import { PrepareForm } from './_components/prepare-form';
import { prepareAction, tickAction, weighBackAction } from './actions';

export const metadata: Metadata = { title: 'Prepare' };

/** Before a glue-up: how many mixes, what goes into each cup, which wire is cut from which length, what to fetch. */
export default async function PrepareBatchPage({ params }: PageProps<'/batches/[batchId]/prepare'>) {
  const { batchId } = await params;
  const nowAt = now();
  const [shop, database] = await Promise.all([currentShop(), db()]);
  const loaded = await loadPreparePage(database, batchId);
  if (loaded === null) notFound();
  const { head, revision, stored } = loaded;
  const room = await roomNow(database, shop, nowAt);
  const used = await loadBatchCost(database, batchId);
  const outlook = await stockOutlook(database, wallTimeAt(nowAt, shop.timeZone).day);
  const temperatureC = Math.round(room.temperatureC * 10) / 10;
  const choices = { ...(stored?.body.choices ?? USUAL_CHOICES), temperatureC };
  const topics = new Set(revision.operations.map(({ caution }) => caution));
  return (
    <Page
      title={`Prepare batch ${head.number}`}
      lead={`${head.modelName}, revision ${head.letter}, ${head.quantity} pieces. ${
        stored === null ? 'Nothing is planned yet.' : `Planned ${whenText(stored.madeAt, nowAt, shop.timeZone)}.`
      }`}
      up={{ href: `/batches/${batchId}`, label: `Batch ${head.number}` }}
      actions={
        stored === null ? undefined : <ButtonLink href={`/batches/${batchId}/prepare/traveler`}>Traveler</ButtonLink>
      }
    >
      {stored !== null && (
        <CardAndCuts
          loaded={loaded}
          stored={stored}
          units={shop}
          action={tickAction.bind(null, batchId)}
          weighAction={weighBackAction.bind(null, batchId)}
        />
      )}
      {stored !== null && (
        <p>
          A tick says what was poured. The clock of the joints starts when the mix is written down on the{' '}
          <Link href={`/batches/${batchId}`} prefetch={false} className="underline underline-offset-4">
            page of the batch
          </Link>
          .
        </p>
      )}
      <Section
        title={stored === null ? 'Choices' : 'Change the choices'}
        lead={
          stored === null
            ? 'Mixes and cuts are planned for what is still open, and stay as they are until they are planned anew.'
            : 'Planning anew makes a new card for what is still open on the batch. Write down first what was poured: a cup that was only ticked off counts as not set, and a wire that is cut but not set is planned again.'
        }
      >
        <PrepareForm
          action={prepareAction.bind(null, batchId)}
          choices={choices}
          units={shop}
          roomSource={room.source}
          isAgain={stored !== null}
        />
      </Section>
      <Section title="To fetch" lead="The bill of the batch less what was taken, and what is left in Stock.">
        <PickList batchId={batchId} bill={used?.bill ?? []} outlook={outlook} units={shop} />
      </Section>
      <Section title="Cautions">
        {topics.has('dust') && <Caution topic="dust" isBrief />}
        {(topics.has('lead') || (revision.ballast ?? []).some(({ metal }) => metal === 'lead')) && (
          <Caution topic="lead" isBrief />
        )}
        <Caution topic="heat" />
      </Section>
    </Page>
  );
}
