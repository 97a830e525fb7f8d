import type { Metadata } from 'next';
import { now } from '@/app/_server/clock';
import { readListQuery, type SearchParams } from '@/app/_server/list-query';
import { findPlanRun, listPlanRuns, type PlanRun } from '@/app/_server/plan-runs';
import { loadPlanView, type PlanView } from '@/app/_server/plan-view';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { EmptyState } from '@/app/_ui/empty-state';
import { Card, Page, Section } from '@/app/_ui/page';
import { countText } from '@/lib/batch/batch-words';
import { dateClockText } from '@/lib/units/format-instant';
import { db } from '@/prisma/client';
import { listMixableMaterials } from '@/prisma/data/mix-materials';
import { listReplacedPlans } from '@/prisma/data/plans';
import { BatchComparison } from './_components/batch-comparison';
import { Figures } from './_components/figures';
import { PlanDesk } from './_components/plan-desk';
import { ImpossibleList, MovedList, OverloadFact, Warnings } from './_components/plan-lists';
import { RunState, StartButton } from './_components/run-buttons';
import { SessionList } from './_components/session-list';
import { WhatIfForm } from './_components/what-if-form';

export const metadata: Metadata = { title: 'Plan' };

/** What is done in which session, so that cures run through the nights. `?run=` shows a plan that is only tried. */
export default async function PlanPage({ searchParams }: { readonly searchParams: SearchParams }) {
  const { word } = await readListQuery(searchParams);
  const [shop, database] = [await currentShop(), await db()];
  const view = await loadPlanView(database, shop, now());
  const run = findPlanRun(word('run'));
  if (!view.hasTasks) {
    return (
      <Page title="Plan">
        <EmptyState title="Nothing to plan" action={<ButtonLink href="/batches/new">New batch</ButtonLink>}>
          <p>
            A plan fits the steps of open batches into the bench hours of Shop, so that cures run through the nights.
          </p>
        </EmptyState>
      </Page>
    );
  }
  const replaced = await listReplacedPlans(database, REPLACED_COUNT);
  const zone = shop.timeZone;
  const shown = run?.timetable ?? (run === null ? view.current : null);
  const names = new Map(view.people.map(({ id, name }) => [id, name]));
  const nameOf = (id: string | null) => (id === null ? 'Nobody named' : (names.get(id) ?? 'Somebody who left'));
  const toCome = shown?.visits.filter(({ state }) => state !== 'done') ?? [];
  return (
    <Page
      title="Plan"
      lead={leadText(view, zone)}
      actions={
        <>
          {view.current !== null && (
            <ButtonLink href="/plan/print" weight="quiet">
              Print a week
            </ButtonLink>
          )}
          <StartButton label={view.held === null ? 'Make a plan' : 'Plan anew'} whatIf={null} />
        </>
      }
    >
      {run !== null && <Proposal run={run} />}
      {run === null && view.conflicts.length > 0 && (
        <Section title="In conflict" lead="The plan does not hold any more. Nothing is moved until you plan anew.">
          <Warnings sentences={view.conflicts.map(({ text }) => text)} />
        </Section>
      )}
      {view.overload !== null && <OverloadFact overload={view.overload} zone={zone} />}
      {run === null && view.held !== null && view.unplanned.length > 0 && (
        <Warnings sentences={[`${view.unplanned.length} steps are new and not planned yet. Plan anew.`]} />
      )}
      <Warnings sentences={view.notes} />
      {shown !== null && (
        <>
          <Figures timetable={shown} />
          <ImpossibleList title="Without a place" visits={shown.unplaced} />
          {run !== null && <ImpossibleList title="Pins that cannot be kept" visits={shown.pinClashes} />}
          <PlanDesk
            visits={shown.visits}
            batches={shown.batches}
            people={view.people}
            places={view.places}
            nowAt={view.nowAt}
            horizonAt={view.horizonAt}
            zone={zone}
            conflicts={run === null ? view.conflicts : []}
            canPin={run === null}
          />
          {(run !== null || shown.moved.length > 0) && view.held !== null && (
            <Section title="What moved" lead="Against the plan before, and why.">
              <MovedList moved={shown.moved} zone={zone} />
            </Section>
          )}
          <Section
            title="Batches"
            lead={run === null ? undefined : 'Side by side; nothing is saved until it is accepted.'}
          >
            <BatchComparison plans={comparedPlans(view, run)} zone={zone} />
          </Section>
        </>
      )}
      <Section title="What if" lead="The effect of a change in the shop on every date. Nothing is saved.">
        <Card>
          <WhatIfForm
            places={view.places}
            people={view.people}
            adhesives={(await listMixableMaterials(database)).map(({ id, name }) => ({ id, name }))}
            batches={
              (view.current ?? shown)?.batches.map(({ batchId, number, modelName }) => ({
                id: batchId,
                name: `${number} ${modelName}`,
              })) ?? []
            }
            unit={shop.temperatureUnit}
          />
        </Card>
      </Section>
      {replaced.length > 0 && (
        <Section title="Plans before" lead="What each of them moved against the one before it.">
          {replaced.map(({ id, madeAt, timetable }) => (
            <details key={id}>
              <summary className="inline-flex min-h-touch items-center underline underline-offset-4">
                {dateClockText(madeAt, zone)}: {countText(timetable.moved.length, 'visit')} moved
              </summary>
              <MovedList moved={timetable.moved} zone={zone} />
            </details>
          ))}
        </Section>
      )}
      {toCome.length > 0 && (
        <Section title="Session by session">
          <SessionList visits={toCome} nameOf={nameOf} zone={zone} />
        </Section>
      )}
    </Page>
  );
}

function Proposal({ run }: { readonly run: PlanRun }) {
  return (
    <Section
      title={run.whatIf.length === 0 ? 'A new plan' : `What if: ${run.whatIf.join('; ')}`}
      lead="Only tried so far: the plan that holds stays until this one is accepted."
    >
      {run.message !== null && <Warnings sentences={[run.message]} />}
      <RunState
        key={run.id}
        runId={run.id}
        isRunning={run.status === 'running'}
        version={run.version}
        hasPlan={run.timetable !== null}
      />
    </Section>
  );
}

/** Plans of before that are listed. Chosen: some weeks of evenings. */
const REPLACED_COUNT = 6;

/** Most plans side by side. Chosen: what a desk's screen holds. */
const MOST_COMPARED = 4;

/** The plan that holds, and those tried against it: the one in view last. */
function comparedPlans(view: PlanView, run: PlanRun | null) {
  const tried = listPlanRuns()
    .filter((one) => one.againstPlanId === (view.held?.id ?? null) && one.id !== run?.id && one.whatIf.length > 0)
    .slice(-MOST_COMPARED);
  const runs = run === null ? [] : [...tried, run];
  return [
    ...(view.current === null ? [] : [{ id: 'held', title: 'Plan that holds', timetable: view.current }]),
    ...runs.flatMap(({ id, whatIf, timetable }) =>
      timetable === null ? [] : [{ id, title: whatIf.join('; ') || 'New plan', timetable }],
    ),
  ];
}

function leadText({ held }: PlanView, zone: string): string {
  if (held === null)
    return 'No plan yet. One fits all open batches into the bench hours, with their cures in the nights.';
  return `As accepted ${dateClockText(held.madeAt, zone)}. Drag a bar to pin it; press it to read more.`;
}
