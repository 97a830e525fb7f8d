import Link from 'next/link';
import { Suspense } from 'react';
import { type NextSession, nextSession, type PersonSession } from '@/app/_plan/next-session';
import { loadPlanView } from '@/app/_server/plan-view';
import { dayText } from '@/app/_ui/day-text';
import { Section } from '@/app/_ui/page';
import { countText, listText, pieceText } from '@/lib/batch/batch-words';
import { durationText } from '@/lib/units/format-duration';
import { clockText } from '@/lib/units/format-instant';
import type { Instant } from '@/lib/units/instant';
import { wallTimeAt } from '@/lib/units/zoned-time';
import { db } from '@/prisma/client';
import { findAcceptedPlanId } from '@/prisma/data/plans';
import type { ShopSettings } from '@/prisma/data/shop';

interface SessionTonightProps {
  readonly shop: ShopSettings;
  readonly nowAt: Instant;
}

/**
 * What the plan has for the next session: in which order, with which mixes, how long, and when one is done. The lists
 * of the bench do not wait for it: after each event the plan is looked at anew.
 */
export async function SessionTonight(props: SessionTonightProps) {
  if ((await findAcceptedPlanId(await db())) === null) return null;
  return (
    <Suspense
      fallback={
        <Section title="Planned next">
          <p className="min-h-40 text-ink-soft">The plan is being read.</p>
        </Section>
      }
    >
      <PlannedSession {...props} />
    </Suspense>
  );
}

async function PlannedSession({ shop, nowAt }: SessionTonightProps) {
  const view = await loadPlanView(await db(), shop, nowAt);
  const session = view.current === null ? null : nextSession(view.current, shop.timeZone, nowAt);
  if (session === null) return null;
  const names = new Map(view.people.map(({ id, name }) => [id, name]));
  const inConflict = view.conflicts.length;
  return (
    <Section
      title={titleOf(session, shop.timeZone, nowAt)}
      lead={
        <>
          As planned; the lists below say what the cure allows. <PlanLink text="Plan" />
          {inConflict > 0 && (
            <strong className="text-accent">
              {' '}
              {countText(inConflict, 'conflict')} in the plan: <PlanLink text="plan anew" />.
            </strong>
          )}
        </>
      }
    >
      <div className="grid gap-4">
        {session.people.map((person) => (
          <PersonStints
            key={person.personId}
            person={person}
            name={person.personId === null ? 'Nobody named' : (names.get(person.personId) ?? 'Somebody who left')}
            zone={shop.timeZone}
          />
        ))}
      </div>
    </Section>
  );
}

function PlanLink({ text }: { readonly text: string }) {
  return (
    <Link href="/plan" prefetch={false} className="underline underline-offset-4">
      {text}
    </Link>
  );
}

function titleOf({ day }: NextSession, zone: string, nowAt: Instant): string {
  return day === wallTimeAt(nowAt, zone).day ? 'This session' : `Next session, ${dayText(day)}`;
}

function PersonStints({
  person,
  name,
  zone,
}: {
  readonly person: PersonSession;
  readonly name: string;
  readonly zone: string;
}) {
  const mixes = person.mixes.map(({ materialName, cups }) =>
    cups === 1 ? materialName : `${materialName}, ${cups} cups`,
  );
  return (
    <div className="grid gap-2 rounded-sheet border border-line bg-sheet p-4">
      <p className="flex flex-wrap justify-between gap-x-4">
        <strong>{name}</strong>
        <span>
          {durationText(person.attendedMs)}, done {clockText(person.endAt, zone)}
        </span>
      </p>
      <ol className="grid gap-1">
        {person.stints.map(({ visit, startAt }) => (
          <li key={`${visit.key} ${startAt}`} className="grid grid-cols-[5rem_1fr] gap-2">
            <span>{clockText(startAt, zone)}</span>
            <span>
              Batch {visit.batchNumber}: {visit.operationName}, {pieceText(visit.pieces)}
              {visit.remedies.length > 0 && `; first: ${visit.remedies.join(', ')}`}
            </span>
          </li>
        ))}
      </ol>
      {mixes.length > 0 && <p className="text-sm text-ink-soft">To mix: {listText(mixes)}.</p>}
    </div>
  );
}
