import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { now } from '@/app/_server/clock';
import { readListQuery, type SearchParams } from '@/app/_server/list-query';
import { findPlanRun, listPlanRuns, type PlanRun } from '@/app/_server/plan-runs';
import { loadPlanView, type PlanView } from '@/app/_server/plan-view';
import { listPlansBefore } from '@/app/_server/plans-before';
import { currentShop } from '@/app/_server/shop';
import { ButtonLink } from '@/app/_ui/button-link';
import { EmptyState } from '@/app/_ui/empty-state';
import { Card, Page, Section } from '@/app/_ui/page';
import { countText } from '@/lib/batch/batch-words';
import { dateClockText } from '@/lib/units/format-instant';
import { type Db, db } from '@/prisma/client';
import { listMixableMaterials } from '@/prisma/data/mix-materials';
import type { ShopSettings } from '@/prisma/data/shop';
import type { ComparedPlan } from './_components/batch-comparison';
import { HeldSheet } from './_components/held-sheet';
import { MovedList, OverloadFact, Warnings } from './_components/plan-lists';
import type { PlanSetting } from './_components/plan-sheet';
import { StartButton } from './_components/run-buttons';
import { RunSheet } from './_components/run-sheet';
import { WhatIfForm } from './_components/what-if-form';

export const metadata: Metadata = { title: 'Plan' };

/** What is done in which session, so that cures run through the nights. `?run=` shows a plan that is only tried. */
export default async function PlanPage({ searchParams }: { readonly searchParams: SearchParams }) {
  const { word } = await readListQuery(searchParams);
  const [shop, database] = [await currentShop(), await db()];
  const nowAt = now();
  const view = await loadPlanView(database, shop, nowAt);
  if (!view.hasTasks) return <NothingToPlan />;
  const run = findPlanRun(word('run'));
  const zone = shop.timeZone;
  const { people, places, horizonAt, held } = view;
  const setting: PlanSetting = { people, places, nowAt, horizonAt, zone, hasHeld: held !== null };
  const facts = (
    <>
      {view.overload !== null && <OverloadFact overload={view.overload} zone={zone} />}
      <Warnings sentences={view.notes} />
    </>
  );
  const below = <Below database={database} shop={shop} view={view} run={run} />;
  return (
    <Page title="Plan" lead={leadText(view, zone)} actions={<Actions view={view} />}>
      {run === null ? (
        <Held view={view} setting={setting} facts={facts}>
          {below}
        </Held>
      ) : (
        <RunSheet
          key={run.id}
          run={followed(run)}
          title={run.whatIf.length === 0 ? 'A new plan' : `What if: ${run.whatIf.join('; ')}`}
          setting={setting}
          compared={[...heldPlans(view), ...triedPlans(view, run)]}
          facts={facts}
        >
          {below}
        </RunSheet>
      )}
    </Page>
  );
}

function NothingToPlan() {
  return (
    <Page title="Plan">
      <EmptyState title="Nothing to plan" action={<ButtonLink href="/batches/new">New batch</ButtonLink>}>
        <p>A plan fits the steps of open batches into the bench hours of Shop, so that cures run through the nights.</p>
      </EmptyState>
    </Page>
  );
}

function Actions({ view }: { readonly view: PlanView }) {
  return (
    <>
      {view.held !== null && (
        <ButtonLink href="/plan/print" weight="quiet">
          Print a week
        </ButtonLink>
      )}
      <StartButton label={view.held === null ? 'Make a plan' : 'Plan anew'} whatIf={null} />
    </>
  );
}

interface HeldProps {
  readonly view: PlanView;
  readonly setting: PlanSetting;
  readonly facts: ReactNode;
  readonly children: ReactNode;
}

/** The plan that holds, and what is wrong with it. */
function Held({ view, setting, facts, children }: HeldProps) {
  const { conflicts, unplanned, currentJson } = view;
  return (
    <>
      {conflicts.length > 0 && (
        <Section title="In conflict" lead="The plan does not hold any more. Nothing is moved until you plan anew.">
          <Warnings sentences={conflicts.map(({ text }) => text)} />
        </Section>
      )}
      {facts}
      {currentJson !== null && unplanned.length > 0 && (
        <Warnings sentences={[`${countText(unplanned.length, 'new step')} not planned yet. Plan anew.`]} />
      )}
      {currentJson === null ? (
        children
      ) : (
        <HeldSheet timetableJson={currentJson} setting={setting} conflicts={conflicts} compared={heldPlans(view)}>
          {children}
        </HeldSheet>
      )}
    </>
  );
}

interface BelowProps {
  readonly database: Db;
  readonly shop: ShopSettings;
  readonly view: PlanView;
  readonly run: PlanRun | null;
}

/** What can be tried, and the plans of before. */
async function Below({ database, shop, view, run }: BelowProps) {
  const adhesives = await listMixableMaterials(database);
  const before = await listPlansBefore(database);
  const batches = (view.current ?? run?.plan?.summary)?.batches ?? [];
  return (
    <>
      <Section title="What if" lead="The effect of a change in the shop on every date. Nothing is saved.">
        <Card>
          <WhatIfForm
            places={view.places}
            people={view.people.map(({ id, name }) => ({ id, name }))}
            adhesives={adhesives.map(({ id, name }) => ({ id, name }))}
            batches={batches.map(({ batchId, number, modelName }) => ({ id: batchId, name: `${number} ${modelName}` }))}
            unit={shop.temperatureUnit}
          />
        </Card>
      </Section>
      {before.length > 0 && (
        <Section title="Plans before" lead="What each of them moved against the one before it.">
          {before.map(({ id, madeAt, moved }) => (
            <details key={id}>
              <summary className="inline-flex min-h-touch items-center underline underline-offset-4">
                {dateClockText(madeAt, shop.timeZone)}: {countText(moved.length, 'visit')} moved
              </summary>
              <MovedList moved={moved} zone={shop.timeZone} />
            </details>
          ))}
        </Section>
      )}
    </>
  );
}

/** Most plans side by side. Chosen: what a desk's screen holds. */
const MOST_COMPARED = 4;

function heldPlans({ current }: PlanView): readonly ComparedPlan[] {
  if (current === null) return [];
  const { value, unavoidableLateMinutes, isProvedBest, batches } = current;
  return [{ id: 'held', title: 'Plan that holds', summary: { value, unavoidableLateMinutes, isProvedBest, batches } }];
}

/** The plans that were tried against the one that holds, but for the one in view. */
function triedPlans(view: PlanView, run: PlanRun): readonly ComparedPlan[] {
  return listPlanRuns()
    .filter((one) => one.againstPlanId === (view.held?.id ?? null) && one.id !== run.id && one.whatIf.length > 0)
    .slice(-MOST_COMPARED)
    .flatMap(({ id, whatIf, plan }) =>
      plan === null ? [] : [{ id, title: whatIf.join('; '), summary: plan.summary }],
    );
}

function followed({ id, status, message, plansMade, version, isHarder, harder, plan }: PlanRun) {
  return { id, status, message, plansMade, version, isHarder, harder, timetableJson: plan?.timetableJson ?? null };
}

function leadText({ held }: PlanView, zone: string): string {
  if (held === null)
    return 'No plan yet. One fits all open batches into the bench hours, with their cures in the nights.';
  return `As accepted ${dateClockText(held.madeAt, zone)}. Drag a bar to pin it; press it to read more.`;
}
