'use client';

import { useState } from 'react';
import type { Instant } from '@/lib/units/instant';
import { FieldFrame } from '../_ui/field';
import { inputClass } from '../_ui/input-class';
import { ActionDialog, BenchForm, type ReadyAction } from './action-dialog';
import { PiecePicker } from './piece-picker';
import { TypedField } from './typed-field';
import { WhenField } from './when-field';

/** A batch to report about. */
export interface ReportBatch {
  readonly batchId: string;
  readonly number: number;
  readonly name: string;
  readonly seenSeq: number;
  readonly quantity: number;
  readonly scrapped: readonly number[];
}

export interface PieceReportButtonProps {
  readonly kind: 'scrap' | 'note';
  readonly batches: readonly ReportBatch[];
}

/** Scraps pieces with a reason, or writes a note on some or on the whole batch. */
export function PieceReportButton({ kind, batches }: PieceReportButtonProps) {
  if (batches.length === 0) return null;
  return (
    <ActionDialog
      label={kind === 'scrap' ? 'Scrap pieces' : 'Write a note'}
      title={kind === 'scrap' ? 'Scrap pieces' : 'Write a note'}
    >
      {(close) => <ReportForm kind={kind} batches={batches} onSent={close} />}
    </ActionDialog>
  );
}

const REASONS = ['Split', 'Wrong drilling', 'Bad joint', 'Finish spoiled'] as const;

function ReportForm({ kind, batches, onSent }: PieceReportButtonProps & { readonly onSent: () => void }) {
  const [batchId, setBatchId] = useState(batches[0]?.batchId ?? '');
  const batch = batches.find((candidate) => candidate.batchId === batchId) ?? batches[0];
  const [picked, setPicked] = useState<ReadonlySet<number>>(new Set());
  const [text, setText] = useState('');
  const [at, setAt] = useState<Instant | null>(null);
  const [isTried, setTried] = useState(false);
  if (batch === undefined) return null;
  const scrapped = new Set(batch.scrapped);
  const pickable = Array.from({ length: batch.quantity }, (_, index) => ({ number: index + 1 })).filter(
    ({ number }) => kind === 'note' || !scrapped.has(number),
  );

  function ready(): ReadyAction | null {
    setTried(true);
    const pieces = [...picked].sort((a, b) => a - b);
    const written = text.trim();
    if (written === '' || (kind === 'scrap' && pieces.length === 0)) return null;
    return kind === 'scrap'
      ? {
          label: `${pieces.length} ${pieces.length === 1 ? 'piece' : 'pieces'} scrapped`,
          at,
          action: { kind: 'pieces-scrapped', pieces, reason: written },
        }
      : { label: 'note', at, action: { kind: 'noted', text: written, pieces } };
  }

  return (
    <BenchForm
      batch={batch}
      submitLabel={
        kind === 'scrap' ? `Scrap ${picked.size} ${picked.size === 1 ? 'piece' : 'pieces'}` : 'Keep the note'
      }
      ready={ready}
      onSent={onSent}
    >
      {batches.length > 1 && (
        <FieldFrame id="report-batch" label="Batch" error={undefined}>
          <select
            id="report-batch"
            className={inputClass}
            value={batch.batchId}
            onChange={(event) => {
              setBatchId(event.currentTarget.value);
              setPicked(new Set());
            }}
          >
            {batches.map(({ batchId: id, number, name }) => (
              <option key={id} value={id}>{`${number}: ${name}`}</option>
            ))}
          </select>
        </FieldFrame>
      )}
      <PiecePicker
        legend={kind === 'scrap' ? 'Which pieces' : 'About which pieces (none: the whole batch)'}
        pieces={pickable}
        picked={picked}
        onPick={setPicked}
        error={isTried && kind === 'scrap' && picked.size === 0 ? 'Pick at least one piece.' : undefined}
      />
      {kind === 'scrap' && (
        <div className="flex flex-wrap gap-2">
          {REASONS.map((reason) => (
            <button
              key={reason}
              type="button"
              aria-pressed={text === reason}
              onClick={() => setText(reason)}
              className="min-h-touch rounded-sheet border-2 border-line-strong bg-sheet px-3 aria-pressed:border-ink aria-pressed:font-semibold"
            >
              {reason}
            </button>
          ))}
        </div>
      )}
      <TypedField
        label={kind === 'scrap' ? 'Reason' : 'Note'}
        isLong={kind === 'note'}
        value={text}
        onChange={setText}
        error={isTried && text.trim() === '' ? 'Write a few words.' : undefined}
      />
      <WhenField at={at} onChange={setAt} />
    </BenchForm>
  );
}
