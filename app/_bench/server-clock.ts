'use client';

import { useEffect, useState } from 'react';
import type { Instant } from '@/lib/units/instant';

/**
 * The server's clock as this device knows it. Countdowns run to instants of the server, so a device whose own clock
 * is wrong, or that slept, still shows the right time: only the difference of the two clocks is kept here.
 */
let offsetMs: number | null = null;

/** Takes in what the server said its time was, between asking and hearing the answer (device time, ms). */
export function noteServerTime(serverAt: Instant, askedAtMs: number, answeredAtMs: number): void {
  offsetMs = serverAt - (askedAtMs + answeredAtMs) / 2;
}

/** The server's time now, as well as this device can tell. */
export function serverTime(): Instant {
  return Math.round(Date.now() + (offsetMs ?? 0));
}

const SECOND_MS = 1_000;

/**
 * The server's time, renewed at every full second. Begins with the instant the page was made at, so that the first
 * picture is the server's own.
 */
export function useServerTime(renderedAt: Instant): Instant {
  const [nowAt, setNowAt] = useState(renderedAt);
  useEffect(() => {
    if (offsetMs === null) noteServerTime(renderedAt, Date.now(), Date.now());
    let timer: ReturnType<typeof setTimeout> | undefined;
    const tick = () => {
      clearTimeout(timer);
      const now = serverTime();
      setNowAt(now);
      timer = setTimeout(tick, SECOND_MS - (now % SECOND_MS));
    };
    tick();
    // A sleeping phone stops its timers; what is shown must be right at the first look.
    document.addEventListener('visibilitychange', tick);
    window.addEventListener('pageshow', tick);
    return () => {
      clearTimeout(timer);
      document.removeEventListener('visibilitychange', tick);
      window.removeEventListener('pageshow', tick);
    };
  }, [renderedAt]);
  return nowAt;
}
