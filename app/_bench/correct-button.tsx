'use client';

import { useState } from 'react';
import type { CorrectableAction } from '@/lib/contracts/batch-action';
import type { Instant } from '@/lib/units/instant';
import { ActionDialog, BenchForm, type ReadyAction } from './action-dialog';
import { type BatchRef, useBenchWorld } from './bench-context';
import { HowField } from './how-field';
import { PiecePicker } from './piece-picker';
import { TypedField } from './typed-field';
import { readTyped, typedMass, typedTemperature } from './typed-quantity';
import { WhenField } from './when-field';

export interface CorrectButtonProps {
  readonly batch: BatchRef;
  readonly seq: number;
  /** The entry as a sentence. */
  readonly text: string;
  readonly at: Instant;
  /** What was recorded; null for an entry that can only be taken back, as a correction. */
  readonly action: CorrectableAction | null;
  readonly quantity: number;
}

/** Corrects an entry: it did not happen, or it happened otherwise. The history keeps both. */
export function CorrectButton(props: CorrectButtonProps) {
  return (
    <ActionDialog label="Correct" weight="quiet" title={`Correct entry ${props.seq} of batch ${props.batch.number}`}>
      {(close) => <CorrectForm {...props} onSent={close} />}
    </ActionDialog>
  );
}

function CorrectForm({
  batch,
  seq,
  text,
  at,
  action,
  quantity,
  onSent,
}: CorrectButtonProps & { readonly onSent: () => void }) {
  const { massUnit, temperatureUnit } = useBenchWorld();
  const [how, setHow] = useState<'void' | 'replace'>('void');
  const [reason, setReason] = useState('');
  const [newAt, setNewAt] = useState<Instant | null>(at);
  const [pieces, setPieces] = useState<ReadonlySet<number>>(new Set(piecesOf(action)));
  const [mass, setMass] = useState(action?.kind === 'mix-started' ? typedMass(action.massG, massUnit) : '');
  const [temperature, setTemperature] = useState(
    action?.kind === 'mix-started' ? typedTemperature(action.temperatureC, temperatureUnit) : '',
  );
  const [words, setWords] = useState(wordsOf(action));
  const [isTried, setTried] = useState(false);
  const massG = readTyped('mass', mass, massUnit, '9.5');
  const temperatureC = readTyped('temperature', temperature, temperatureUnit, '21');

  /** What happened instead; null when a field is wrong. */
  function replacement(): CorrectableAction | null {
    if (action === null) return null;
    const numbers = [...pieces].sort((a, b) => a - b);
    switch (action.kind) {
      case 'mix-started':
        if (!massG.ok || !temperatureC.ok || massG.value === 0) return null;
        return { ...action, massG: massG.value, temperatureC: temperatureC.value };
      case 'joints-set': {
        const anchorIds = [...new Set(action.joints.map((joint) => joint.anchorId))];
        const joints = numbers.flatMap((piece) => anchorIds.map((anchorId) => ({ piece, anchorId })));
        return joints.length === 0 ? null : { ...action, joints };
      }
      case 'work-done':
      case 'coat-applied':
      case 'window-remedied':
        return numbers.length === 0 ? null : { ...action, pieces: numbers };
      case 'pieces-scrapped':
        return numbers.length === 0 || words.trim() === ''
          ? null
          : { ...action, pieces: numbers, reason: words.trim() };
      case 'noted':
        return words.trim() === '' ? null : { ...action, pieces: numbers, text: words.trim() };
      case 'pieces-cleared':
        return numbers.length === 0 ? null : { ...action, pieces: numbers };
      case 'mix-quarantined':
        return words.trim() === '' ? null : { ...action, reason: words.trim() };
      case 'mix-closed':
      case 'batch-finished':
      case 'batch-reopened':
        return action;
    }
  }

  function ready(): ReadyAction | null {
    setTried(true);
    const written = reason.trim() === '' ? 'Recorded by mistake' : reason.trim();
    if (how === 'void') {
      return {
        label: `entry ${seq} taken back`,
        at: null,
        action: { kind: 'corrected', seq, reason: written, replacement: null },
      };
    }
    const instead = replacement();
    if (instead === null) return null;
    return {
      label: `entry ${seq} corrected`,
      at: null,
      action: { kind: 'corrected', seq, reason: written, replacement: { at: newAt ?? at, action: instead } },
    };
  }

  const isReplacing = how === 'replace' && action !== null;
  const hasPieces = action !== null && piecesOf(action) !== null;
  return (
    <BenchForm
      batch={batch}
      submitLabel={how === 'void' ? 'Take the entry back' : 'Put this in its place'}
      ready={ready}
      onSent={onSent}
    >
      <p className="border-l-2 border-line-strong pl-4">{text}</p>
      {action !== null && <HowField how={how} onChange={setHow} />}
      {isReplacing && action.kind === 'mix-started' && (
        <div className="grid grid-cols-2 gap-4">
          <TypedField
            label="Mass in the cup"
            unit={massUnit}
            value={mass}
            onChange={setMass}
            error={isTried && !massG.ok ? massG.error : undefined}
          />
          <TypedField
            label="Warmer of room and parts"
            unit={`°${temperatureUnit}`}
            value={temperature}
            onChange={setTemperature}
            error={isTried && !temperatureC.ok ? temperatureC.error : undefined}
          />
        </div>
      )}
      {isReplacing && hasPieces && (
        <PiecePicker
          legend="Pieces"
          pieces={Array.from({ length: quantity }, (_, index) => ({ number: index + 1 }))}
          picked={pieces}
          onPick={setPieces}
          error={isTried && pieces.size === 0 && action.kind !== 'noted' ? 'Pick at least one piece.' : undefined}
        />
      )}
      {isReplacing &&
        (action.kind === 'pieces-scrapped' || action.kind === 'mix-quarantined' || action.kind === 'noted') && (
          <TypedField
            label={action.kind === 'noted' ? 'Note' : 'Reason of the scrap'}
            value={words}
            onChange={setWords}
            error={isTried && words.trim() === '' ? 'Write a few words.' : undefined}
          />
        )}
      {isReplacing && <WhenField at={newAt} onChange={setNewAt} />}
      <TypedField label="Why it is corrected" isOptional value={reason} onChange={setReason} />
    </BenchForm>
  );
}

/** The pieces an action names; null for one that names none by its kind. */
function piecesOf(action: CorrectableAction | null): readonly number[] | null {
  if (action === null) return null;
  if (action.kind === 'joints-set') return [...new Set(action.joints.map((joint) => joint.piece))];
  return 'pieces' in action ? action.pieces : null;
}

function wordsOf(action: CorrectableAction | null): string {
  if (action?.kind === 'pieces-scrapped' || action?.kind === 'mix-quarantined') return action.reason;
  return action?.kind === 'noted' ? action.text : '';
}
