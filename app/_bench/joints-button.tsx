'use client';

import { useState } from 'react';
import type { Instant } from '@/lib/units/instant';
import { Caution } from '../_ui/caution';
import { ActionDialog, BenchForm, type ReadyAction } from './action-dialog';
import type { BatchRef } from './bench-context';
import { firstPieces, HANDFUL, PiecePicker } from './piece-picker';
import { TogglePicker } from './toggle-picker';
import { WhenField } from './when-field';

export interface JointsButtonProps {
  readonly batch: BatchRef;
  readonly mixId: string;
  readonly mixNumber: number;
  readonly operationName: string;
  readonly anchors: readonly { readonly id: string; readonly name: string }[];
  /** Pieces that joints can be set on now, with the anchors that are not set yet. */
  readonly pieces: readonly { readonly number: number; readonly unsetIds: readonly string[] }[];
}

/** Sets joints with a running mix: the next pieces are picked already. */
export function JointsButton(props: JointsButtonProps) {
  return (
    <ActionDialog
      label="Set joints"
      weight="primary"
      title={`Joints with mix ${props.mixNumber}, batch ${props.batch.number}`}
    >
      {(close) => <JointsForm {...props} onSent={close} />}
    </ActionDialog>
  );
}

function JointsForm({
  batch,
  mixId,
  mixNumber,
  operationName,
  anchors,
  pieces,
  onSent,
}: JointsButtonProps & { readonly onSent: () => void }) {
  const pickable = pieces.map(({ number, unsetIds }) => ({ number, isPart: unsetIds.length < anchors.length }));
  const [picked, setPicked] = useState(firstPieces(pickable, HANDFUL));
  const [anchorIds, setAnchorIds] = useState<ReadonlySet<string>>(new Set(anchors.map((anchor) => anchor.id)));
  const [at, setAt] = useState<Instant | null>(null);
  const [isTried, setTried] = useState(false);
  const joints = pieces.flatMap(({ number, unsetIds }) =>
    picked.has(number)
      ? unsetIds.filter((id) => anchorIds.has(id)).map((anchorId) => ({ piece: number, anchorId }))
      : [],
  );
  const count = `${joints.length} ${joints.length === 1 ? 'joint' : 'joints'}`;

  function ready(): ReadyAction | null {
    setTried(true);
    if (joints.length === 0) return null;
    return { label: `${count} with mix ${mixNumber}`, at, action: { kind: 'joints-set', mixId, joints } };
  }

  return (
    <BenchForm batch={batch} submitLabel={`Set ${count}`} ready={ready} onSent={onSent}>
      <p className="text-ink-soft">{operationName}</p>
      {anchors.length > 1 && (
        <TogglePicker legend="Which anchors" options={anchors} picked={anchorIds} onPick={setAnchorIds} />
      )}
      <PiecePicker
        legend="Pieces"
        pieces={pickable}
        picked={picked}
        onPick={setPicked}
        error={
          isTried && joints.length === 0 ? 'Pick at least one piece and one anchor that is not set yet.' : undefined
        }
      />
      <WhenField at={at} onChange={setAt} />
      <Caution topic="epoxy" />
    </BenchForm>
  );
}
