import type { Bench } from '../_server/bench';
import { StatusMark } from '../_ui/status-mark';
import { BatchStatusButton } from './batch-status-button';
import { BatchLink } from './bench-lists';
import { batchRef } from './operation-buttons';

/** Batches on which nothing is left to do. */
export function FinishList({ bench }: { readonly bench: Bench }) {
  const { shown, more } = bench.view.toFinish;
  if (shown.length === 0) return null;
  return (
    <ul>
      {shown.map((batchId) => {
        const entry = bench.entryOf(batchId);
        return (
          <li key={batchId} className="flex flex-wrap items-center justify-between gap-3 border-b border-line py-3">
            <p>
              <StatusMark status="done">Nothing left to do</StatusMark> on <BatchLink entry={entry} />
            </p>
            <BatchStatusButton batch={batchRef(entry)} isFinished={false} />
          </li>
        );
      })}
      {more > 0 && <li className="py-3 text-sm text-ink-soft">and {more} more that can be finished</li>}
    </ul>
  );
}
