import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { readListQuery, type SearchParams } from '@/app/_server/list-query';
import { loadPlanView } from '@/app/_server/plan-view';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { dayText } from '@/app/_ui/day-text';
import { EmptyState } from '@/app/_ui/empty-state';
import { Page } from '@/app/_ui/page';
import { addDays, instantOfWallTime, isCalendarDay, wallTimeAt } from '@/lib/units/zoned-time';
import { db } from '@/prisma/client';
import { SessionList } from '../_components/session-list';

export const metadata: Metadata = { title: 'Plan of a week' };

/** One week of the plan for the wall, black on white. `?from=2026-03-12` begins with another day than today. */
export default async function PrintPage({ searchParams }: { readonly searchParams: SearchParams }) {
  const { word } = await readListQuery(searchParams);
  const shop = await currentShop();
  const nowAt = now();
  const view = await loadPlanView(await db(), shop, nowAt);
  const zone = shop.timeZone;
  const asked = word('from');
  const from = isCalendarDay(asked) ? asked : wallTimeAt(nowAt, zone).day;
  const fromAt = instantOfWallTime(from, 0, zone);
  const toAt = instantOfWallTime(addDays(from, 7), 0, zone);
  const visits = (view.current?.visits ?? []).flatMap((visit) => {
    const stretches = visit.stretches.filter(({ startAt }) => startAt >= fromAt && startAt < toAt);
    return stretches.length === 0 || visit.state === 'done' ? [] : [{ ...visit, stretches }];
  });
  const names = new Map(view.people.map(({ id, name }) => [id, name]));
  return (
    <Page
      title={`${shop.name}: ${dayText(from)} to ${dayText(addDays(from, 6))}`}
      up={{ href: '/plan', label: 'Plan' }}
      actions={
        <span className="flex flex-wrap gap-2 print:hidden">
          <ButtonLink href={`/plan/print?from=${addDays(from, -7)}`}>Week before</ButtonLink>
          <ButtonLink href={`/plan/print?from=${addDays(from, 7)}`}>Week after</ButtonLink>
        </span>
      }
    >
      {visits.length === 0 ? (
        <EmptyState title="Nothing is planned in this week">
          <p>Print it from your browser once there is.</p>
        </EmptyState>
      ) : (
        <SessionList
          visits={visits}
          nameOf={(id) => (id === null ? 'Nobody named' : (names.get(id) ?? 'Somebody who left'))}
          zone={zone}
        />
      )}
      <p className="text-sm">
        Gloves, eye protection and fresh air wherever resin is mixed; dust mask at the sander. Your product’s data sheet
        holds. An operation may begin once the Bench says so, whatever this sheet says.
      </p>
    </Page>
  );
}
