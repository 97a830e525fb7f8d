import { db } from '@/prisma/client';
import { BenchProvider } from './_bench/bench-context';
import { ActionList, HeldList, ReleaseList } from './_bench/bench-lists';
import { BenchSync } from './_bench/bench-sync';
import { FinishList } from './_bench/finish-list';
import { FirstSteps } from './_bench/first-steps';
import { PieceReportButton } from './_bench/piece-report-button';
import { QuarantineList } from './_bench/quarantine-list';
import { RecentList } from './_bench/recent-list';
import { reportBatch } from './_bench/report-batch';
import { RunningMixes } from './_bench/running-mixes';
import { SessionTonight } from './_bench/session-tonight';
import { loadBench } from './_server/bench';
import { loadBenchWorld } from './_server/bench-world';
import { now } from './_server/clock';
import { currentPeople, currentShop } from './_server/shop';
import { Page, Section } from './_ui/page';

/** What the workshop can do now. */
export default async function BenchPage() {
  const nowAt = now();
  const database = await db();
  const shop = await currentShop();
  const bench = await loadBench(database, shop, nowAt);
  if (bench.entries.length === 0) {
    return (
      <Page title="Bench">
        <FirstSteps />
      </Page>
    );
  }
  const world = await loadBenchWorld(database, shop, bench.entries, nowAt);
  const people = await currentPeople();
  const names = new Map(people.map(({ id, name }) => [id, name]));
  const reportBatches = bench.entries.map(reportBatch);
  return (
    <BenchProvider world={world}>
      <BenchSync version={bench.version} changesAt={bench.changesAt} />
      <Page title="Bench">
        <div className="grid gap-8 lg:grid-cols-[3fr_2fr]">
          <div className="grid min-w-0 content-start gap-8">
            <RunningMixes bench={bench} shop={shop} />
            <QuarantineList entries={bench.entries} />
            <SessionTonight shop={shop} nowAt={nowAt} />
            <Section title="Now" lead="What can be done, most urgent first.">
              <ActionList bench={bench} />
              <FinishList bench={bench} />
            </Section>
            <Section title="Not yet" lead="What is held back, and until when.">
              <HeldList bench={bench} />
            </Section>
          </div>
          <div className="grid min-w-0 content-start gap-8">
            <Section title="Next" lead="What the cure allows next. An action is allowed from the later hour.">
              <ReleaseList bench={bench} unit={shop.temperatureUnit} />
            </Section>
            <Section
              title="Just now"
              actions={
                <>
                  <PieceReportButton kind="scrap" batches={reportBatches} />
                  <PieceReportButton kind="note" batches={reportBatches} />
                </>
              }
            >
              <RecentList recent={bench.recent} nameOf={(id) => names.get(id ?? '') ?? null} />
            </Section>
          </div>
        </div>
      </Page>
    </BenchProvider>
  );
}
