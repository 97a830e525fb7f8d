import type { PlanSummary } from '@/app/_plan/worker-messages';
import { StatusMark } from '@/app/_ui/status-mark';
import { Table } from '@/app/_ui/table';
import { countText } from '@/lib/batch/batch-words';
import type { PlannedBatchLine } from '@/lib/contracts/stored-plan';
import { dateText } from '@/lib/units/format-instant';
import { HOUR_MS, type Instant } from '@/lib/units/instant';

/** A plan that is compared with the one in view. */
export interface ComparedPlan {
  readonly id: string;
  readonly title: string;
  readonly summary: PlanSummary;
}

/** A batch in all plans; null: what they come to in all. */
type Line = PlannedBatchLine | null;

/** Plans side by side: what each is late by, and when each batch is ready in it, sooner or later than in the first. */
export function BatchComparison({ plans, zone }: { readonly plans: readonly ComparedPlan[]; readonly zone: string }) {
  const batches = new Map<string, PlannedBatchLine>();
  for (const { summary } of plans) for (const batch of summary.batches) batches.set(batch.batchId, batch);
  const lineOf = (plan: ComparedPlan | undefined, batchId: string) =>
    plan?.summary.batches.find((batch) => batch.batchId === batchId);
  const [first] = plans;
  return (
    <Table<Line>
      caption="When each batch is ready"
      rows={[null, ...[...batches.values()].toSorted((a, b) => a.number - b.number)]}
      rowKey={(line) => line?.batchId ?? 'all'}
      columns={[
        {
          id: 'batch',
          title: 'Batch',
          cell: (line) => (line === null ? 'In all' : `${line.number} ${line.modelName}`),
        },
        {
          id: 'due',
          title: 'Due',
          cell: (line) => (line === null ? '' : line.dueAt === null ? 'whenever' : dateText(line.dueAt - 1, zone)),
        },
        ...plans.map((plan) => ({
          id: plan.id,
          title: plan.title,
          cell: (line: Line) =>
            line === null ? (
              <InAll summary={plan.summary} />
            ) : (
              <Ready
                line={lineOf(plan, line.batchId)}
                before={plan === first ? undefined : lineOf(first, line.batchId)}
                zone={zone}
              />
            ),
        })),
      ]}
    />
  );
}

function InAll({ summary: { value, batches } }: { readonly summary: PlanSummary }) {
  const late = batches.filter(({ readyAt, dueAt }) => dueAt !== null && (readyAt === null || readyAt > dueAt)).length;
  return (
    <>
      <strong>{(value.weightedLateMinutes / 1440).toFixed(1)} weighted days late</strong>
      <br />
      {late === 0 ? 'every batch on time' : `${late} of ${batches.length} batches late`},{' '}
      {countText(value.sessions, 'session')}
    </>
  );
}

interface ReadyProps {
  readonly line: PlannedBatchLine | undefined;
  /** The same batch in the plan that is compared with. */
  readonly before: PlannedBatchLine | undefined;
  readonly zone: string;
}

function Ready({ line, before, zone }: ReadyProps) {
  if (line === undefined) return '–';
  const { readyAt, dueAt } = line;
  if (readyAt === null) return <StatusMark status="held">Not in 8 weeks</StatusMark>;
  const change = changeText(readyAt, before?.readyAt ?? null);
  return (
    <>
      {dueAt === null || readyAt <= dueAt ? (
        dateText(readyAt, zone)
      ) : (
        <StatusMark status="late">
          {dateText(readyAt, zone)}, {lengthText(readyAt - dueAt)} late
        </StatusMark>
      )}
      {change !== null && <span className="block text-sm text-ink-soft">{change}</span>}
    </>
  );
}

/** `1.5 days sooner`; null where it is about the same, or nothing to compare with. */
function changeText(readyAt: Instant, beforeAt: Instant | null): string | null {
  if (beforeAt === null || Math.abs(readyAt - beforeAt) < HOUR_MS) return null;
  return `${lengthText(Math.abs(readyAt - beforeAt))} ${readyAt < beforeAt ? 'sooner' : 'later'}`;
}

function lengthText(ms: number): string {
  const days = ms / (24 * HOUR_MS);
  return days < 1 ? `${Math.ceil(days * 24)} h` : `${days.toFixed(1)} days`;
}
