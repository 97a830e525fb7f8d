import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { readListQuery, type SearchParams } from '@/app/_server/list-query';
import { type CostPart, modelCost } from '@/app/_server/model-cost';
import { currentShop } from '@/app/_server/shop';
import { Card, Page, Section } from '@/app/_ui/page';
import { Why } from '@/app/_ui/why';
import { priceAtMargin } from '@/lib/bom/cost';
import { stockText } from '@/lib/stock/stock-text';
import { durationText } from '@/lib/units/format-duration';
import { MINUTE_MS } from '@/lib/units/instant';
import { moneyText } from '@/lib/units/money';
import { readNumber } from '@/lib/units/read-number';
import { db } from '@/prisma/client';
import { getCostRates } from '@/prisma/data/cost-rates';
import { findModel } from '@/prisma/data/models';
import { listOperationPlanning } from '@/prisma/data/operation-planning';
import { findRevision, type RevisionOperation } from '@/prisma/data/revisions';
import { scrapOfModel } from '@/prisma/data/scrap';
import type { ShopSettings } from '@/prisma/data/shop';
import { CostBars } from './_components/cost-bars';
import { CostQuestionForm, CostRatesForm } from './_components/cost-question-form';

export const metadata: Metadata = { title: 'Cost' };

interface CostPageProps {
  readonly params: Promise<{ modelId: string }>;
  readonly searchParams: SearchParams;
}

/** What a model costs at standard prices, what makes up the cost, and what it would have to sell for. */
export default async function CostPage({ params, searchParams }: CostPageProps) {
  const [{ modelId }, { word }, database, shop] = await Promise.all([
    params,
    readListQuery(searchParams),
    db(),
    currentShop(),
  ]);
  const model = await findModel(database, modelId);
  const head = model?.revisions.find(({ letter }) => letter === word('revision')) ?? model?.revisions[0];
  const revision = head === undefined ? null : await findRevision(database, head.id);
  if (model === null || revision === null) notFound();
  const [rates, history] = [await getCostRates(database), await scrapOfModel(database, modelId)];
  const asked = (name: string, least: number, most: number, usual: number) => {
    const read = readNumber(word(name));
    return read.ok && read.value >= least && read.value <= most ? read.value : usual;
  };
  const goodPieces = Math.round(asked('pieces', 1, 9999, history.lastQuantity ?? 12));
  const planning = await listOperationPlanning(database, [revision.id]);
  const spoiling = revision.operations.flatMap((operation): Spoiling[] => {
    const percent = planning.get(operation.id)?.spoiltPercent ?? 0;
    return percent > 0 ? [{ operation, percent }] : [];
  });
  const usual = spoiling.length > 0 ? 0 : Math.round(1000 * (history.scrapShare ?? 0)) / 10;
  const scrapPercent = asked('scrap', 0, 90, usual);
  const { cost, startPieces, attendedMinutesEach, parts } = await modelCost(database, revision, {
    goodPieces,
    scrapShare: scrapPercent / 100,
    scrapAt: new Map(spoiling.map(({ operation, percent }) => [operation.id, percent / 100])),
    labourPerHourMinor: rates.labourPerHourMinor,
  });
  const unknown = parts.filter((part) => part.minor === null);
  const money = (minor: number) => moneyText(minor, shop.currency);
  const each = cost.perGoodPieceMinor ?? 0;
  const least = unknown.length === 0 ? '' : 'at least ';
  return (
    <Page
      title={`Cost of ${model.name}`}
      lead={`Revision ${revision.letter}, at standard prices. What a batch really cost stands on the page of the batch.`}
      up={{ href: `/models/${modelId}?revision=${revision.letter}`, label: model.name }}
    >
      <CostQuestionForm letter={revision.letter} pieces={goodPieces} scrapPercent={scrapPercent} />
      <Section title={`${least}${money(each)} for a good piece`} lead={scrapLead(history, scrapPercent, spoiling)}>
        <p>
          {goodPieces} good pieces, {startPieces} begun: {least}
          {money(cost.totalMinor)}, of which {money(cost.materialsMinor)} material and {money(cost.labourMinor)} work.
        </p>
        {rates.marginShare !== null && (
          <p>
            To keep {Math.round(rates.marginShare * 100)} % of the price it sells for {least}
            <strong>{money(priceAtMargin(each, rates.marginShare))}</strong>.
          </p>
        )}
        <Why
          about={`${money(each)} for a good piece`}
          formula="(material for all pieces begun, at standard prices, + attended hours of all pieces begun × hourly rate) / good pieces; lines are rounded so that they add up to the total"
          inputs={[
            {
              label: 'Pieces begun',
              value: `${goodPieces}${[...spoiling.map(({ percent }) => percent), scrapPercent].map((percent) => ` / (1 − ${percent} %)`).join('')}, rounded up for whole things`,
            },
            { label: 'Attended', value: `${durationText(attendedMinutesEach * MINUTE_MS)} a piece, by the route` },
            {
              label: 'Hourly rate',
              value: rates.labourPerHourMinor === null ? 'not set' : money(rates.labourPerHourMinor),
            },
          ]}
          assumption="A piece spoilt at a step took the time up to it and the materials that these steps name; what no step names it took at the start. What is given here counts as spoilt at the end of the route. Glue and coats count as the bill says; what stays in the cup counts when the bill includes it."
        />
      </Section>
      <Section title="What makes it up" lead="Of the whole batch, the dearest first. Filled: material. Hollow: work.">
        <CostBars
          bars={parts.map((part) => ({
            id: part.id,
            name: part.name,
            detail: detailOf(part, shop),
            minor: part.minor,
            isWork: part.kind === 'labour',
          }))}
          totalMinor={cost.totalMinor}
          currency={shop.currency}
        />
        {unknown.length > 0 && (
          <p className="text-ink-soft">
            Not known, and so not in the sum: {unknown.map((part) => part.name).join(', ')}. Write down what a pack of
            it costs on its page in Stock, what was paid for a lot, or the hourly rate below.
          </p>
        )}
      </Section>
      <Section title="Rates of the shop">
        <Card className="max-w-3xl">
          <CostRatesForm rates={rates} currency={shop.currency} />
        </Card>
      </Section>
    </Page>
  );
}

interface Spoiling {
  readonly operation: RevisionOperation;
  readonly percent: number;
}

function scrapLead(
  history: Awaited<ReturnType<typeof scrapOfModel>>,
  scrapPercent: number,
  spoiling: readonly Spoiling[],
): string {
  if (spoiling.length > 0) {
    const steps = spoiling.map(({ operation, percent }) => `${operation.name} ${percent} %`);
    return `Spoilt by the model's Planning: ${steps.join(', ')}; and at the end ${scrapPercent} %.`;
  }
  if (history.scrapShare === null) return `With ${scrapPercent} % spoilt: no batch of it is finished that could tell.`;
  const told = `${history.scrapped} of ${history.pieces} pieces of finished batches were spoilt`;
  return `With ${scrapPercent} % spoilt; ${told}.`;
}

function detailOf({ quantity, unit, price }: CostPart, shop: ShopSettings): string {
  if (quantity === null || unit === null) return '';
  const text = stockText(quantity, unit, shop);
  if (price === null || !price.ok) return `${text}, no price`;
  return `${text}, ${price.from === 'pack' ? 'by its pack' : 'by its newest lot'}`;
}
