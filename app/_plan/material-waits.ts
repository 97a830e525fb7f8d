import { dayText } from '@/app/_ui/day-text';
import type { Task } from '@/lib/schedule/planning-problem';
import { type LotPartName, partMilli, partNeeds, stillNeeded } from '@/lib/stock/batch-need';
import { fromMilli, type StockUnit } from '@/lib/stock/ledger';
import { type StepNeed, type StepSupply, suppliesOf } from '@/lib/stock/receipts';
import { stockText } from '@/lib/stock/stock-text';
import { addDays, type CalendarDay, instantOfWallTime, wallTimeAt } from '@/lib/units/zoned-time';
import { needKey, type StockedMaterial } from '@/prisma/data/batch-needs';
import type { PlanBatch, PlanInput } from './plan-input';
import type { MaterialWait, PlanNote, TaskAbout } from './task-about';

/** What steps wait for because stock is short, by task, and what is short with nothing ordered. */
export interface MaterialWaits {
  readonly waits: ReadonlyMap<string, MaterialWait>;
  readonly notes: readonly PlanNote[];
}

/** A need of one thing with the batch and the step that have it. */
interface OwnNeed extends StepNeed {
  readonly batchId: string;
  readonly batchNumber: number;
  /** The step that is known to take it; null: nothing says which one does. */
  readonly operationName: string | null;
}

/**
 * Has what is short wait for what is ordered: the batch that is due first is served first, and within a batch its
 * steps in the order of the route. What a step mixes is taken by that step. What no step names is taken by the first
 * step of the batch, hooks and split rings by the last one; of a batch that is begun the first step has taken it.
 * Materials that no book is kept of, with no lot and no order ever, are not judged.
 */
export function materialWaits(
  input: PlanInput,
  tasks: readonly Task[],
  about: ReadonlyMap<string, TaskAbout>,
): MaterialWaits {
  const today = wallTimeAt(input.nowAt, input.zone).day;
  const waits = new Map<string, MaterialWait>();
  const notes: PlanNote[] = [];
  const batches = input.batches.toSorted(byDueDay);
  for (const material of input.stock.materials) {
    const orders = input.stock.orders.filter(({ materialId }) => materialId === material.id);
    if (material.lots.length === 0 && orders.length === 0) continue;
    for (const unit of new Set(
      input.stock.bills.flatMap((bill) => (bill.materialId === material.id ? [bill.unit] : [])),
    )) {
      const needs = batches.flatMap((batch) => needsOf(input, batch, material, unit, tasks, about));
      for (const part of partsOf(material)) {
        const share = (milli: number) => partMilli(milli, material.sheet, material.boughtParts, part);
        const supplies = suppliesOf(
          today,
          material.lots.filter((lot) => lot.unit === unit && lot.part === part),
          orders.flatMap((order) =>
            order.unit === unit ? [{ milli: share(order.milli), expectedOn: order.expectedOn }] : [],
          ),
          needs.map((need) => ({ key: need.key, milli: share(need.milli) })),
        );
        const name = part === 'whole' ? material.name : `${material.name}, ${part}`;
        const text = (milli: number) => stockText(fromMilli(milli), unit, input.units);
        enterWaits(waits, supplies, name, text, input.zone);
        const overdueOn = orders.find(({ expectedOn }) => expectedOn < today)?.expectedOn ?? null;
        notes.push(...shortNotes(needs, supplies, name, text, { overdueOn, isOrdered: orders.length > 0 }));
      }
    }
  }
  return { waits, notes };
}

function byDueDay({ head: a }: PlanBatch, { head: b }: PlanBatch): number {
  const [dueA, dueB] = [a.dueOn ?? '9999-12-31', b.dueOn ?? '9999-12-31'];
  return dueA < dueB ? -1 : dueA > dueB ? 1 : a.number - b.number;
}

/** What the open steps of a batch still take of a material, no more than its bill leaves. */
function needsOf(
  input: PlanInput,
  batch: PlanBatch,
  material: StockedMaterial,
  unit: StockUnit,
  tasks: readonly Task[],
  about: ReadonlyMap<string, TaskAbout>,
): readonly OwnNeed[] {
  const { head, known } = batch;
  const bill = input.stock.bills.find(
    (one) => one.revisionId === head.revisionId && one.materialId === material.id && one.unit === unit,
  );
  if (bill === undefined) return [];
  const pieces = known.state.pieces.filter(({ scrapped }) => scrapped === null).length;
  const left = stillNeeded(bill.perPieceMilli, pieces, input.stock.taken.get(needKey(head.id, material.id, unit)) ?? 0);
  const takers = takersOf(batch, material, tasks, about);
  const named = known.plan.operations.filter(({ materialId }) => materialId === material.id).length;
  const needs = takers.map((own) => ({
    key: own.taskId,
    batchId: head.id,
    batchNumber: head.number,
    operationName: named === 0 ? null : own.about.operationName,
    milli: (bill.perPieceMilli / Math.max(1, named)) * own.about.pieces.length,
  }));
  const sum = needs.reduce((all, { milli }) => all + milli, 0);
  const scale = sum > left ? left / sum : 1;
  return needs.map((need) => ({ ...need, milli: Math.round(need.milli * scale) })).filter(({ milli }) => milli > 0);
}

/** The open visits that take a material, in the order of the route. */
function takersOf(
  { head, known }: PlanBatch,
  material: StockedMaterial,
  tasks: readonly Task[],
  about: ReadonlyMap<string, TaskAbout>,
): readonly { readonly taskId: string; readonly about: TaskAbout }[] {
  const { operations } = known.plan;
  const isNamed = operations.some(({ materialId }) => materialId === material.id);
  const isLast = material.kind === 'hook' || material.kind === 'split-ring';
  const isBegun = known.state.pieces.some((piece) => piece.operations[0]?.doneAt != null);
  if (!isNamed && !isLast && isBegun) return [];
  const only = isNamed ? null : (isLast ? operations.at(-1) : operations[0])?.id;
  return tasks.flatMap(({ id, batchId, state }) => {
    const own = about.get(id);
    if (batchId !== head.id || own === undefined || (state.kind !== 'open' && state.kind !== 'pinned')) return [];
    const isTaker = only === null ? own.materialId === material.id : own.operationId === only;
    return isTaker ? [{ taskId: id, about: own }] : [];
  });
}

function enterWaits(
  waits: Map<string, MaterialWait>,
  supplies: readonly StepSupply[],
  name: string,
  text: (milli: number) => string,
  zone: string,
): void {
  for (const { key, neededMilli, thereMilli, waitsOn, shortMilli } of supplies) {
    if (waitsOn === null) continue;
    const fromAt = instantOfWallTime(addDays(waitsOn, 1), 0, zone);
    const before = waits.get(key);
    if (before !== undefined && before.fromAt >= fromAt) continue;
    const because = `${text(neededMilli - thereMilli - shortMilli)} of ${name} is expected on ${dayText(waitsOn)}`;
    waits.set(key, { fromAt, because });
  }
}

/** One note for each batch and thing: the first step that meets it, and what all its steps are short of. */
function shortNotes(
  needs: readonly OwnNeed[],
  supplies: readonly StepSupply[],
  name: string,
  text: (milli: number) => string,
  { overdueOn, isOrdered }: { readonly overdueOn: CalendarDay | null; readonly isOrdered: boolean },
): readonly PlanNote[] {
  const byBatch = new Map<string, { need: OwnNeed; needed: number; short: number }>();
  for (const [i, supply] of supplies.entries()) {
    const need = needs[i];
    if (need === undefined) continue;
    const known = byBatch.get(need.batchId) ?? { need, needed: 0, short: 0 };
    byBatch.set(need.batchId, {
      need: known.short === 0 ? need : known.need,
      needed: known.needed + supply.neededMilli,
      short: known.short + supply.shortMilli,
    });
  }
  return [...byBatch.values()].flatMap(({ need, needed, short }) => {
    if (short === 0) return [];
    const ordered =
      overdueOn !== null
        ? `what was expected on ${dayText(overdueOn)} has not come`
        : isOrdered
          ? 'what is ordered does not make up for it'
          : 'nothing is ordered';
    const words = `Not enough ${name} for ${stepWords(need)}: ${text(short)} of ${text(needed)} missing, and ${ordered}.`;
    return [{ batchId: need.batchId, text: `${words} The plan goes on as if it were there.` }];
  });
}

function stepWords({ batchNumber, operationName }: OwnNeed): string {
  return operationName === null ? `batch ${batchNumber}` : `batch ${batchNumber}, ${operationName}`;
}

/** The parts a material is kept in; none where its ratio is not known, so that nothing can be told. */
function partsOf({ sheet, boughtParts }: StockedMaterial): readonly LotPartName[] {
  const split = partNeeds(0, sheet, boughtParts);
  return split.ok ? split.parts.map(({ part }) => part) : [];
}
