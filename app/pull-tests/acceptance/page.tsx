import { randomBytes, randomUUID } from 'node:crypto';
import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { foldedBatch, routeOf } from '@/app/_server/known-batches';
import { readListQuery, type SearchParams } from '@/app/_server/list-query';
import { currentShop } from '@/app/_server/shop';
import { ActionForm } from '@/app/_ui/action-form';
import { QuantityField, TextField } from '@/app/_ui/field';
import { Card, Page } from '@/app/_ui/page';
import { SelectField } from '@/app/_ui/select-field';
import { SubmitButton } from '@/app/_ui/submit-button';
import { pullsToAccept } from '@/lib/pulltest/acceptance';
import { db } from '@/prisma/client';
import { findBatchHead } from '@/prisma/data/batches';
import { PullCautions } from '../_components/pull-cautions';
import { makeAcceptanceAction } from '../actions';

export const metadata: Metadata = { title: 'Test a sample of a batch' };

/** Joints of an ordinary shop scatter so within a mix; known about as well as from a first series. Chosen. */
const USUAL_SCATTER = { logSd: 0.18, freedom: 8 } as const;
const CERTAINTY = { content: 0.95, confidence: 0.75 } as const;

/** Pieces of a batch to be drawn and pulled: `?batch=`. */
export default async function NewAcceptancePage({ searchParams }: { readonly searchParams: SearchParams }) {
  const { word } = await readListQuery(searchParams);
  const [database, shop] = [await db(), await currentShop()];
  const head = await findBatchHead(database, word('batch'));
  if (head === null) notFound();
  const { plan } = await routeOf(database, head.revisionId);
  const mixes = (await foldedBatch(database, head)).state.mixes.filter(({ jointCount }) => jointCount > 0).length;
  const needed = (ratio: number) =>
    pullsToAccept(ratio, USUAL_SCATTER, Math.max(1, mixes), CERTAINTY) ?? 'more than 50';
  return (
    <Page
      title={`Test a sample of batch ${head.number}`}
      lead="A mix is accepted or held on pulls of its own: a good mix cannot carry a bad one."
      up={{ href: `/batches/${head.id}`, label: `Batch ${head.number}` }}
    >
      <Card className="max-w-2xl">
        <ActionForm action={makeAcceptanceAction}>
          <input type="hidden" name="seriesId" value={randomUUID()} />
          <input type="hidden" name="batchId" value={head.id} />
          <SelectField
            name="anchorId"
            label="Anchor to be pulled"
            emptyLabel="choose"
            options={plan.anchors.map(({ id, name }) => ({ value: id, label: name }))}
          />
          <QuantityField
            name="demand"
            label="Load it must carry"
            hint="Factor of safety included."
            unit={shop.forceUnit}
          />
          <TextField
            name="perMix"
            label="Pieces of each mix"
            hint={`At a usual scatter: joints twice as strong as asked need ${needed(2)}, half as strong again ${needed(1.5)}.`}
            inputMode="numeric"
            defaultValue="3"
            maxLength={3}
          />
          <TextField
            name="seed"
            label="Seed of the draw"
            hint="Which pieces, and in which order, is drawn from it."
            defaultValue={randomBytes(6).toString('hex')}
            maxLength={80}
          />
          <div>
            <SubmitButton pendingText="Drawing…">Draw the pieces</SubmitButton>
          </div>
        </ActionForm>
      </Card>
      <PullCautions step="after" />
    </Page>
  );
}
