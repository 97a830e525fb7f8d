import type { PlanSummary } from '@/app/_plan/worker-messages';
import { StatusMark } from '@/app/_ui/status-mark';
import { Table } from '@/app/_ui/table';
import type { PlannedBatchLine } from '@/lib/contracts/stored-plan';
import { dateText } from '@/lib/units/format-instant';
import type { Instant } from '@/lib/units/instant';

/** A plan that is compared with the one in view. */
export interface ComparedPlan {
  readonly id: string;
  readonly title: string;
  readonly summary: PlanSummary;
}

/** Plans side by side: when each batch is ready in each of them. */
export function BatchComparison({ plans, zone }: { readonly plans: readonly ComparedPlan[]; readonly zone: string }) {
  const batches = new Map<string, PlannedBatchLine>();
  for (const { summary } of plans) for (const batch of summary.batches) batches.set(batch.batchId, batch);
  const lineOf = (plan: ComparedPlan, batchId: string) =>
    plan.summary.batches.find((batch) => batch.batchId === batchId);
  return (
    <Table
      caption="When each batch is ready"
      rows={[...batches.values()].toSorted((a, b) => a.number - b.number)}
      rowKey={(batch) => batch.batchId}
      columns={[
        { id: 'batch', title: 'Batch', cell: (batch) => `${batch.number} ${batch.modelName}` },
        {
          id: 'due',
          title: 'Due',
          cell: (batch) => (batch.dueAt === null ? 'whenever' : dateText(batch.dueAt - 1, zone)),
        },
        ...plans.map((plan) => ({
          id: plan.id,
          title: plan.title,
          cell: (batch: PlannedBatchLine) => <Ready line={lineOf(plan, batch.batchId)} zone={zone} />,
        })),
      ]}
    />
  );
}

function Ready({ line, zone }: { readonly line: PlannedBatchLine | undefined; readonly zone: string }) {
  if (line === undefined) return '–';
  const { readyAt, dueAt } = line;
  if (readyAt === null) return <StatusMark status="held">Not in 8 weeks</StatusMark>;
  if (dueAt === null || readyAt <= dueAt) return dateText(readyAt, zone);
  return (
    <StatusMark status="late">
      {dateText(readyAt, zone)}, {lateText(readyAt, dueAt)}
    </StatusMark>
  );
}

function lateText(readyAt: Instant, dueAt: Instant): string {
  const days = (readyAt - dueAt) / 86_400_000;
  return days < 1 ? `${Math.ceil(days * 24)} h late` : `${days.toFixed(1)} days late`;
}
