'use client';

import { useEffect, useId, useState, useTransition } from 'react';
import type { PinCheck } from '@/app/_plan/pin-effect';
import { buttonClass } from '@/app/_ui/button-class';
import { Dialog } from '@/app/_ui/dialog';
import { FieldError } from '@/app/_ui/field';
import { inputClass } from '@/app/_ui/input-class';
import { pieceText } from '@/lib/batch/batch-words';
import type { PlannedVisit } from '@/lib/contracts/stored-plan';
import { durationText } from '@/lib/units/format-duration';
import { dateClockText, weekdayClockText } from '@/lib/units/format-instant';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';
import { instantOfWallMs, zoneOffsetMs } from '@/lib/units/zoned-time';
import { checkPinAction, pinAction } from '../actions';

export interface VisitDialogProps {
  readonly visit: PlannedVisit;
  /** Where it was dropped; null: it was opened where it stands. */
  readonly droppedAt: Instant | null;
  readonly people: readonly { readonly id: string; readonly name: string }[];
  readonly conflicts: readonly string[];
  readonly zone: string;
  /** Whether it can be pinned here: a plan that is only tried cannot. */
  readonly canPin: boolean;
  readonly onClose: () => void;
}

/** Typing rests so long before what was typed is tried, ms. Chosen. */
const CHECK_AFTER_MS = 350;
const NOT_CHECKED = { ok: false, message: 'It could not be tried: the server does not answer.' } as const;

/** A visit in words, and the place where it is pinned by typing: what a pin would clash with is said before it holds. */
export function VisitDialog({ visit, droppedAt, people, conflicts, zone, canPin, onClose }: VisitDialogProps) {
  const id = useId();
  const [typed, setTyped] = useState(() => wallText(droppedAt ?? visit.startAt, zone));
  const [personId, setPersonId] = useState(visit.personId ?? '');
  const [checked, setChecked] = useState<PinCheck | null>(null);
  const [error, setError] = useState<string | null>(null);
  const [isPending, start] = useTransition();
  const [isTouched, setIsTouched] = useState(droppedAt !== null);
  const isToCome = visit.state === 'open' || visit.state === 'pinned';
  const names = new Map(people.map((person) => [person.id, person.name]));
  const { batchId, taskKey } = visit;
  const isFree = checked !== null && checked.clashes.length + checked.effects.length === 0;

  // What was dropped or typed is tried at once, so that the reason against it stands there before it is pinned.
  useEffect(() => {
    const startAt = isTouched && canPin ? instantOfText(typed, zone) : null;
    if (startAt === null) return;
    let isOver = false;
    const wait = setTimeout(async () => {
      const request = { batchId, taskKey, startAt, personId: personId === '' ? null : personId };
      const answer = await checkPinAction(request).catch(() => NOT_CHECKED);
      if (isOver) return;
      if (answer.ok) setChecked(answer);
      else setError(answer.message);
    }, CHECK_AFTER_MS);
    return () => {
      isOver = true;
      clearTimeout(wait);
    };
  }, [isTouched, canPin, typed, personId, zone, batchId, taskKey]);

  function change() {
    setIsTouched(true);
    setChecked(null);
    setError(null);
  }

  function pin() {
    const startAt = instantOfText(typed, zone);
    if (startAt === null) return setError('Write the day and the hour.');
    const request = { batchId, taskKey, startAt, personId: personId === '' ? null : personId };
    start(async () => {
      setError(null);
      if (checked === null) {
        const answer = await checkPinAction(request);
        if (!answer.ok) return setError(answer.message);
        setChecked(answer);
        if (answer.clashes.length + answer.effects.length > 0) return;
      }
      const pinned = await pinAction(request);
      if (!pinned.ok) return setError(pinned.message);
      onClose();
    });
  }

  function letGo() {
    start(async () => {
      const answer = await pinAction({ batchId, taskKey, startAt: null });
      if (!answer.ok) return setError(answer.message);
      onClose();
    });
  }

  return (
    <Dialog isOpen onClose={onClose} title={`Batch ${visit.batchNumber}: ${visit.operationName}`}>
      <dl className="grid grid-cols-[auto_1fr] gap-x-4 gap-y-1">
        <Fact term="When">
          {dateClockText(visit.startAt, zone)}, {durationText(attendedMs(visit))}
          {visit.setUpMinutes > 0 && `, ${visit.setUpMinutes} min of it to get ready`}
        </Fact>
        <Fact term="Who">
          {visit.personId === null ? 'nobody named' : (names.get(visit.personId) ?? 'somebody who left')}
        </Fact>
        <Fact term="What">
          {pieceText(visit.pieces)}
          {visit.materialName !== null && `, ${visit.materialName}`}
        </Fact>
        {visit.waitsFor !== null && <Fact term="Waits for">{visit.waitsFor}</Fact>}
        {visit.curedAt !== null && <Fact term="Cured">{weekdayClockText(visit.curedAt, zone)} at the latest</Fact>}
        {visit.closesAt !== null && <Fact term="Window closes">{weekdayClockText(visit.closesAt, zone)}</Fact>}
        {visit.remedies.length > 0 && <Fact term="First">{visit.remedies.join('; ')}: the window closes before</Fact>}
      </dl>
      {conflicts.length > 0 && <Sentences title="In conflict" sentences={conflicts} />}
      {isToCome && canPin && (
        <div className="grid gap-4 border-t border-line pt-4">
          <div className="grid gap-4 sm:grid-cols-2">
            <div className="grid gap-1.5">
              <label htmlFor={`${id}-when`} className="font-semibold">
                Begins
              </label>
              <input
                id={`${id}-when`}
                type="datetime-local"
                className={inputClass}
                value={typed}
                onChange={(event) => {
                  setTyped(event.currentTarget.value);
                  change();
                }}
              />
            </div>
            <div className="grid gap-1.5">
              <label htmlFor={`${id}-who`} className="font-semibold">
                Who
              </label>
              <select
                id={`${id}-who`}
                className={inputClass}
                value={personId}
                onChange={(event) => {
                  setPersonId(event.currentTarget.value);
                  change();
                }}
              >
                <option value="">whoever can</option>
                {people.map((person) => (
                  <option key={person.id} value={person.id}>
                    {person.name}
                  </option>
                ))}
              </select>
            </div>
          </div>
          <div role="status" className="grid gap-3">
            {isTouched && checked === null && error === null && <p className="text-ink-soft">Trying it there…</p>}
            {checked !== null && checked.clashes.length > 0 && (
              <Sentences title="It cannot be kept there" sentences={checked.clashes} />
            )}
            {checked !== null && checked.effects.length > 0 && (
              <Sentences title="What it costs" sentences={checked.effects} />
            )}
            {isFree && <p>Nothing stands against it.</p>}
          </div>
          {error !== null && <FieldError id={id} text={error} />}
          <div className="flex flex-wrap gap-3">
            <button type="button" disabled={isPending} className={buttonClass('primary')} onClick={pin}>
              {checked === null || isFree ? 'Pin it here' : 'Pin it all the same'}
            </button>
            {visit.state === 'pinned' && (
              <button type="button" disabled={isPending} className={buttonClass('plain')} onClick={letGo}>
                Let it go
              </button>
            )}
          </div>
          <p className="text-sm text-ink-soft">
            What is pinned is never moved by a plan. Plan anew to fit the rest round it.
          </p>
        </div>
      )}
    </Dialog>
  );
}

function Fact({ term, children }: { readonly term: string; readonly children: React.ReactNode }) {
  return (
    <>
      <dt className="text-ink-soft">{term}</dt>
      <dd>{children}</dd>
    </>
  );
}

function Sentences({ title, sentences }: { readonly title: string; readonly sentences: readonly string[] }) {
  return (
    <div className="border-l-4 border-accent bg-accent-soft px-4 py-3">
      <p className="font-bold">{title}</p>
      <ul className="grid gap-1">
        {sentences.slice(0, MOST_SENTENCES).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {sentences.length > MOST_SENTENCES && <p>And {sentences.length - MOST_SENTENCES} more.</p>}
    </div>
  );
}

const MOST_SENTENCES = 6;

function attendedMs({ stretches }: PlannedVisit): number {
  return stretches.reduce((sum, { startAt, endAt }) => sum + endAt - startAt, 0);
}

function wallText(at: Instant, zone: string): string {
  const wallMs = Math.round((at + zoneOffsetMs(at, zone)) / MINUTE_MS) * MINUTE_MS;
  return new Date(wallMs).toISOString().slice(0, 16);
}

function instantOfText(text: string, zone: string): Instant | null {
  const wallMs = Date.parse(`${text}:00Z`);
  return Number.isNaN(wallMs) ? null : instantOfWallMs(wallMs, zone);
}
