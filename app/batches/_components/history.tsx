import { CorrectButton } from '@/app/_bench/correct-button';
import { batchRef } from '@/app/_bench/operation-buttons';
import { correctable } from '@/app/_bench/recent-list';
import type { BenchEntry } from '@/app/_server/bench';
import { Pager } from '@/app/_ui/pager';
import type { HistoryEntry } from '@/lib/batch/batch-state';
import { anomalyText, eventText } from '@/lib/batch/describe-event';
import { MINUTE_MS } from '@/lib/units/instant';

/** Entries on one page of a history. Chosen: an evening's worth. */
const ENTRIES_A_PAGE = 40;

export interface HistoryProps {
  readonly entry: BenchEntry;
  readonly nameOf: (personId: string | null) => string | null;
  /** From 1, newest entries first. */
  readonly page: number;
  readonly hrefOf: (page: number) => string;
}

/** Everything that was recorded, newest first; what was corrected stays, struck through and linked. */
export function History({ entry, nameOf, page, hrefOf }: HistoryProps) {
  const newestFirst = [...entry.batch.state.history].reverse();
  const shown = newestFirst.slice((page - 1) * ENTRIES_A_PAGE, page * ENTRIES_A_PAGE);
  // A link to an entry of another page leads to that page.
  const hrefOfSeq = (seq: number) => {
    const index = newestFirst.findIndex(({ event }) => event.seq === seq);
    const itsPage = Math.floor(Math.max(index, 0) / ENTRIES_A_PAGE) + 1;
    return itsPage === page ? `#entry-${seq}` : `${hrefOf(itsPage)}#entry-${seq}`;
  };
  return (
    <div className="grid gap-4">
      <ol>
        {shown.map((history) => (
          <Entry
            key={history.event.seq}
            entry={entry}
            history={history}
            person={nameOf(history.event.personId)}
            hrefOfSeq={hrefOfSeq}
          />
        ))}
      </ol>
      <Pager
        page={page}
        pageCount={Math.ceil(newestFirst.length / ENTRIES_A_PAGE)}
        total={newestFirst.length}
        things="entries"
        hrefOf={hrefOf}
      />
    </div>
  );
}

interface EntryProps {
  readonly entry: BenchEntry;
  readonly history: HistoryEntry;
  readonly person: string | null;
  readonly hrefOfSeq: (seq: number) => string;
}

/** Recorded later than this after it happened, both hours are shown. Chosen. */
const LATE_ENTRY_MS = 5 * MINUTE_MS;

function Entry({ entry, history, person, hrefOfSeq }: EntryProps) {
  const { words, head } = entry;
  const { event, standing, correctedBySeq, anomalies } = history;
  const text = eventText(event.body, words);
  const isLateEntry = event.recordedAt - event.at > LATE_ENTRY_MS;
  return (
    <li
      id={`entry-${event.seq}`}
      className="grid grid-cols-[1fr_auto] items-center gap-x-3 border-b border-line py-1 target:bg-well"
    >
      <div className="grid min-w-0 gap-0.5 py-2">
        <p>
          <span className="text-ink-soft">{event.seq}.</span> <strong>{words.time(event.at)}</strong>
          {person !== null && ` ${person}`}: {standing === 'stands' ? text : <s>{text}</s>}
        </p>
        {isLateEntry && <p className="text-sm text-ink-soft">written down {words.time(event.recordedAt)}</p>}
        {correctedBySeq !== null && (
          <EntryLink label="corrected by" seq={correctedBySeq} href={hrefOfSeq(correctedBySeq)} />
        )}
        {event.body.kind === 'corrected' && (
          <EntryLink label="corrects" seq={event.body.seq} href={hrefOfSeq(event.body.seq)} />
        )}
        {anomalies.map((anomaly) => (
          <p key={anomaly.code} className="text-sm font-semibold text-accent">
            {anomalyText(anomaly)}
          </p>
        ))}
      </div>
      {standing === 'stands' && event.body.kind !== 'batch-opened' && (
        <CorrectButton
          batch={batchRef(entry)}
          seq={event.seq}
          text={text}
          at={event.at}
          action={correctable(event.body)}
          quantity={head.quantity}
        />
      )}
    </li>
  );
}

function EntryLink({ label, seq, href }: { readonly label: string; readonly seq: number; readonly href: string }) {
  return (
    <p className="text-sm">
      {label}{' '}
      <a href={href} className="underline underline-offset-4">
        entry {seq}
      </a>
    </p>
  );
}
