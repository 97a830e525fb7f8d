import Link from 'next/link';
import { capital, pieceText } from '@/lib/batch/batch-words';
import { quarantinedPieces } from '@/lib/batch/quarantined-pieces';
import type { BenchEntry } from '../_server/bench';
import { StatusMark } from '../_ui/status-mark';
import { ClearButton } from './clear-button';
import { batchRef } from './operation-buttons';

/** Pieces that are held because their mix is in doubt; shows nothing where there are none. */
export function QuarantineList({ entries }: { readonly entries: readonly BenchEntry[] }) {
  const held = entries.flatMap((entry) => quarantinedPieces(entry.batch.state).map((one) => ({ entry, ...one })));
  if (held.length === 0) return null;
  return (
    <section aria-label="Held: mixes in doubt" className="grid gap-3 border-l-4 border-accent bg-accent-soft px-4 py-3">
      {held.map(({ entry, mix, reason, pieces }) => (
        <div key={mix.mixId} className="flex flex-wrap items-center justify-between gap-3">
          <p>
            <StatusMark status="held">{capital(pieceText(pieces))} held</StatusMark>{' '}
            <Link href={`/batches/${entry.head.id}`} prefetch={false} className="underline underline-offset-4">
              Batch {entry.head.number}
            </Link>
            , mix {mix.number}: {reason}. Each is tested, redone or scrapped before it goes on.
          </p>
          <ClearButton batch={batchRef(entry)} mixId={mix.mixId} mixNumber={mix.number} pieces={pieces} />
        </div>
      ))}
    </section>
  );
}
