import { eventText } from '@/lib/batch/describe-event';
import type { BatchEventBody } from '@/lib/batch/events';
import type { CorrectableAction } from '@/lib/contracts/batch-action';
import type { RecentEntry } from '../_server/bench';
import { BatchLink } from './bench-lists';
import { CorrectButton } from './correct-button';
import { batchRef } from './operation-buttons';

export interface RecentListProps {
  readonly recent: readonly RecentEntry[];
  readonly nameOf: (personId: string | null) => string | null;
}

/** The newest entries of all open batches; each can be corrected. */
export function RecentList({ recent, nameOf }: RecentListProps) {
  return (
    <ol>
      {recent.map(({ entry, history }) => {
        const { event, standing } = history;
        const text = eventText(event.body, entry.words);
        const person = nameOf(event.personId);
        return (
          <li
            key={`${entry.head.id} ${event.seq}`}
            className="grid grid-cols-[1fr_auto] items-center gap-x-3 border-b border-line py-1"
          >
            <p className="min-w-0 py-2 text-sm">
              <span className="font-semibold">{entry.words.time(event.at)}</span>
              {person !== null && ` ${person}`}, <BatchLink entry={entry} />:{' '}
              {standing === 'stands' ? text : <s>{text}</s>}
              {standing !== 'stands' && ` (corrected by entry ${history.correctedBySeq})`}
            </p>
            {standing === 'stands' && event.body.kind !== 'batch-opened' && (
              <CorrectButton
                batch={batchRef(entry)}
                seq={event.seq}
                text={text}
                at={event.at}
                action={correctable(event.body)}
                quantity={entry.head.quantity}
              />
            )}
          </li>
        );
      })}
    </ol>
  );
}

/** What a maker said, without what the server added; null for what can only be taken back. */
export function correctable(body: BatchEventBody): CorrectableAction | null {
  switch (body.kind) {
    case 'batch-opened':
    case 'corrected':
      return null;
    case 'mix-started': {
      const { kind, mixId, operationId, materialId, massG, temperatureC, lotIds } = body;
      return { kind, mixId, operationId, materialId, massG, temperatureC, lotIds };
    }
    default:
      return body;
  }
}
