import Link from 'next/link';
import type { ReactNode } from 'react';
import { dayText } from '@/app/_ui/day-text';
import { pieceText } from '@/lib/batch/batch-words';
import type { BenchAction, BenchRelease, HeldPieces } from '@/lib/batch/bench-entries';
import { allowedText, bandText, milestoneText, statusText, urgencyText } from '@/lib/batch/describe-status';
import type { TemperatureUnit } from '@/lib/units/unit-choice';
import type { Bench, BenchEntry } from '../_server/bench';
import { StatusMark } from '../_ui/status-mark';
import { CureWhy } from './cure-why';
import { batchRef, OperationButtons } from './operation-buttons';
import { WorkButton } from './work-button';

/** A line of the bench: what, on which pieces of which batch, why it stands there, and what to press. */
function Line({ children, buttons }: { readonly children: ReactNode; readonly buttons?: ReactNode }) {
  return (
    <li className="grid gap-3 border-b border-line py-3 sm:grid-cols-[1fr_auto] sm:items-center">
      <div className="grid min-w-0 gap-0.5">{children}</div>
      {buttons !== undefined && <div className="flex flex-wrap gap-2">{buttons}</div>}
    </li>
  );
}

/** "Batch 12, Minnow A", as a link to its page. */
export function BatchLink({ entry }: { readonly entry: Pick<BenchEntry, 'head'> }) {
  const { id, number, modelName, letter } = entry.head;
  return (
    <Link href={`/batches/${id}`} prefetch={false} className="underline decoration-line-strong underline-offset-4">
      Batch {number}, {modelName} {letter}
    </Link>
  );
}

function More({ count, what }: { readonly count: number; readonly what: string }) {
  if (count === 0) return null;
  return (
    <p className="py-3 text-sm text-ink-soft">
      and {count} more {what}: see{' '}
      <Link href="/batches" prefetch={false} className="underline underline-offset-4">
        Batches
      </Link>
      .
    </p>
  );
}

/** What can be done now, most urgent first, each with its reason. */
export function ActionList({ bench }: { readonly bench: Bench }) {
  const { shown, more } = bench.view.actions;
  if (shown.length === 0)
    return <p className="text-ink-soft">Nothing waits for a hand now. What comes next stands under Next.</p>;
  return (
    <>
      <ol>
        {shown.map((action) => (
          <ActionLine
            key={`${action.batchId} ${action.operationId}`}
            entry={bench.entryOf(action.batchId)}
            action={action}
          />
        ))}
      </ol>
      <More count={more} what="that can be done" />
    </>
  );
}

function ActionLine({ entry, action }: { readonly entry: BenchEntry; readonly action: BenchAction }) {
  const { words } = entry;
  const isClosing = action.urgency.kind === 'window-closing';
  return (
    <Line buttons={<OperationButtons entry={entry} operationId={action.operationId} pieces={action.pieces} />}>
      <h3 className="text-lg font-bold">{words.operation(action.operationId)}</h3>
      <p>
        <BatchLink entry={entry} />: {pieceText(action.pieces)}
      </p>
      <p className="text-sm">
        <StatusMark status={isClosing ? 'closing' : 'ready'}>
          {sentence(urgencyText(action.urgency, words, dayText))}
        </StatusMark>
      </p>
    </Line>
  );
}

/** Which milestones come next, each with its band and its reasons. */
export function ReleaseList({ bench, unit }: { readonly bench: Bench; readonly unit: TemperatureUnit }) {
  const { shown, more } = bench.view.releases;
  if (shown.length === 0) return <p className="text-ink-soft">Nothing is curing that something waits for.</p>;
  return (
    <>
      <ol>
        {shown.map((release) => (
          <ReleaseLine
            key={`${release.mixId} ${release.milestone}`}
            entry={bench.entryOf(release.batchId)}
            release={release}
            unit={unit}
          />
        ))}
      </ol>
      <More count={more} what="that cure" />
    </>
  );
}

interface ReleaseLineProps {
  readonly entry: BenchEntry;
  readonly release: BenchRelease;
  readonly unit: TemperatureUnit;
}

function ReleaseLine({ entry, release, unit }: ReleaseLineProps) {
  const { words, batch } = entry;
  const { milestone, band, mixId } = release;
  const mix = batch.state.mixes.find((candidate) => candidate.mixId === mixId);
  const setAts = batch.state.clocks.filter((clock) => clock.mixId === mixId).map((clock) => clock.setAt);
  const isClosing = milestone === 'recoat-by';
  return (
    <Line>
      <h3 className="text-lg font-bold">
        {isClosing ? 'Recoat before' : sentence(milestoneText(milestone))}{' '}
        {isClosing
          ? band.earliestAt === null
            ? 'no hour in sight'
            : words.time(band.earliestAt)
          : allowedText(band, words)}
      </h3>
      <p>
        <BatchLink entry={entry} />: {words.operation(release.operationId)}, mix {release.mixNumber},{' '}
        {pieceText(release.pieces)}
      </p>
      <p className="text-sm text-ink-soft">{sentence(bandText(band, words))}</p>
      {mix !== undefined && (
        <CureWhy
          about={`${milestoneText(milestone)} of mix ${mix.number}, batch ${entry.head.number}`}
          sheet={mix.sheet}
          milestones={[milestone]}
          materialName={mix.materialName}
          mixedAt={mix.mixedAt}
          setText={setText(setAts, words.time)}
          time={words.time}
          temperatureUnit={unit}
        />
      )}
    </Line>
  );
}

/** "set at 19:40", or from the first to the last of several. */
export function setText(setAts: readonly number[], time: (at: number) => string): string {
  const first = time(Math.min(...setAts));
  const last = time(Math.max(...setAts));
  if (setAts.length === 0) return 'not used yet';
  return first === last ? `set at ${first}` : `set between ${first} and ${last}`;
}

/** What may not go on yet, and until when. */
export function HeldList({ bench }: { readonly bench: Bench }) {
  const { shown, more } = bench.view.held;
  if (shown.length === 0) return <p className="text-ink-soft">Nothing is held back by a cure.</p>;
  return (
    <>
      <ul>
        {shown.map((held) => (
          <HeldLine
            key={`${held.batchId} ${held.operationId} ${held.pieces[0]} ${held.status.kind}`}
            entry={bench.entryOf(held.batchId)}
            held={held}
          />
        ))}
      </ul>
      <More count={more} what="that wait" />
    </>
  );
}

function HeldLine({ entry, held }: { readonly entry: BenchEntry; readonly held: HeldPieces }) {
  const { words } = entry;
  const { status, operationId, pieces } = held;
  return (
    <Line buttons={<HeldButtons entry={entry} held={held} />}>
      <h3 className="font-bold">
        <StatusMark status={status.kind === 'waits' ? 'waiting' : status.kind === 'window-closed' ? 'expired' : 'held'}>
          {words.operation(operationId)}
        </StatusMark>
      </h3>
      <p>
        <BatchLink entry={entry} />: {pieceText(pieces)} {statusText(status, words)}.
      </p>
    </Line>
  );
}

/** A closed window can be made good; what nobody can judge is left to the maker. */
function HeldButtons({ entry, held }: { readonly entry: BenchEntry; readonly held: HeldPieces }) {
  const { status } = held;
  switch (status.kind) {
    case 'waits':
      return null;
    case 'not-judged':
      return <OperationButtons entry={entry} operationId={held.operationId} pieces={held.pieces} />;
    case 'window-closed':
      return (
        <WorkButton
          batch={batchRef(entry)}
          operationId={status.operationId}
          operationName={entry.words.operation(status.operationId)}
          caution="dust"
          pieces={held.pieces}
          isRemedy
        />
      );
  }
}

/** With a capital letter in front. */
export function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
