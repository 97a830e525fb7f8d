'use client';

import { type ReactNode, useEffect, useRef, useSyncExternalStore } from 'react';
import { countdownText } from '@/lib/units/format-duration';
import { clockText } from '@/lib/units/format-instant';
import { type Instant, MINUTE_MS } from '@/lib/units/instant';
import { Card } from '../_ui/page';
import { StatusMark } from '../_ui/status-mark';
import { alarmState, blockedAlarm, setSilenced, soundAlarm, subscribeToAlarm } from './alarm';
import { useBenchWorld } from './bench-context';
import { useServerTime } from './server-clock';

export interface PotLifeCardProps {
  readonly mixId: string;
  /** "Mix 2, batch 12". */
  readonly title: string;
  /** What it is and what for. */
  readonly about: string;
  readonly mixedAt: Instant;
  /** Null: no pot life can be told, and why. */
  readonly ends: { readonly lowerAt: Instant; readonly centralAt: Instant } | null;
  readonly whyNot: string | null;
  /** What can be done with it. */
  readonly actions: ReactNode;
  readonly why: ReactNode;
}

/** Before the end: time to finish what is begun. Chosen. */
const NEAR_MS = 3 * MINUTE_MS;
/** How often the alarm comes again past the end, and for how long. Chosen. */
const REPEAT_MS = 15_000;
const RING_FOR_MS = 10 * MINUTE_MS;

/** A running mix: its countdown to the lower end of the pot life, large enough for arm's length. */
export function PotLifeCard({ mixId, title, about, mixedAt, ends, whyNot, actions, why }: PotLifeCardProps) {
  const { renderedAt, zone } = useBenchWorld();
  const nowAt = useServerTime(renderedAt);
  const remainingMs = ends === null ? null : ends.lowerAt - nowAt;
  const stage = remainingMs === null ? 'unknown' : remainingMs <= 0 ? 'past' : remainingMs <= NEAR_MS ? 'near' : 'on';
  return (
    <Card
      className={`grid content-start gap-3 ${stage === 'past' || stage === 'near' ? 'border-2 border-accent' : ''}`}
    >
      <div className="flex flex-wrap items-baseline justify-between gap-x-4">
        <h3 className="text-lg font-bold">{title}</h3>
        <StatusMark status={stage === 'past' ? 'expired' : stage === 'near' ? 'closing' : 'running'} />
      </div>
      <p className="-mt-2 text-sm text-ink-soft">{about}</p>
      {remainingMs !== null && (
        <p
          role="timer"
          className={`text-arm font-bold tracking-tight tabular-nums ${stage === 'on' ? '' : 'text-accent'}`}
        >
          {remainingMs > 0 ? countdownText(remainingMs) : 'Expired'}
        </p>
      )}
      {ends === null ? (
        <p>
          <strong>No countdown.</strong> {whyNot} Mixed {clockText(mixedAt, zone)}.
        </p>
      ) : remainingMs !== null && remainingMs > 0 ? (
        <p>
          to {clockText(ends.lowerAt, zone)}, the lower end of its pot life; about {clockText(ends.centralAt, zone)} is
          likely.
        </p>
      ) : (
        <p className="font-semibold">
          Since {clockText(ends.lowerAt, zone)}. Treat what is left in the cup as expired; joints set from now on are
          marked late.
        </p>
      )}
      <div className="flex flex-wrap gap-2">{actions}</div>
      <div>
        {ends !== null && <Alarm mixId={mixId} lowerAt={ends.lowerAt} nowAt={nowAt} />}
        {why}
      </div>
    </Card>
  );
}

interface AlarmProps {
  readonly mixId: string;
  readonly lowerAt: Instant;
  readonly nowAt: Instant;
}

/** Rings at three minutes before the end and at the end; says whether it can be heard. */
function Alarm({ mixId, lowerAt, nowAt }: AlarmProps) {
  const { sound, silencedMixIds } = useSyncExternalStore(subscribeToAlarm, alarmState, blockedAlarm);
  const isSilenced = silencedMixIds.includes(mixId);
  const rung = useRef({ isNear: false, lastAt: 0 });

  useEffect(() => {
    const remainingMs = lowerAt - nowAt;
    if (isSilenced || sound !== 'ready' || remainingMs > NEAR_MS || remainingMs < -RING_FOR_MS) return;
    if (remainingMs > 0) {
      if (!rung.current.isNear) soundAlarm('near');
      rung.current.isNear = true;
    } else if (nowAt - rung.current.lastAt >= REPEAT_MS) {
      soundAlarm('past');
      rung.current.lastAt = nowAt;
    }
  }, [lowerAt, nowAt, isSilenced, sound]);

  return (
    <div className="flex flex-wrap items-center gap-x-3 text-sm">
      <button
        type="button"
        aria-pressed={isSilenced}
        className="min-h-touch font-semibold text-ink-soft underline decoration-line-strong underline-offset-4 hover:text-ink"
        onClick={() => setSilenced(mixId, !isSilenced)}
      >
        {isSilenced ? 'Alarm silenced: switch on' : 'Silence the alarm'}
      </button>
      {!isSilenced && sound === 'untouched' && (
        <span className="font-semibold text-accent">No sound until you touch this screen once.</span>
      )}
      {!isSilenced && sound === 'missing' && (
        <span className="text-ink-soft">This device makes no sound: watch the time.</span>
      )}
    </div>
  );
}
