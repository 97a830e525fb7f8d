'use client';

import { useRouter } from 'next/navigation';
import { useEffect } from 'react';
import type { Instant } from '@/lib/units/instant';
import { noteServerTime, serverTime } from './server-clock';

const ASK_EVERY_MS = 30_000;
/** Longest a browser timer can wait. */
const MAX_TIMER_MS = 2 ** 31 - 1;

export interface BenchSyncProps {
  /** Version of what the page shows. */
  readonly version: string;
  /** When the page changes by the clock alone: the next release, window or expiry. */
  readonly changesAt: Instant | null;
}

/**
 * Keeps a screen true without a touch: asks the server every half minute, and at once after a sleep, whether
 * anything is new, and takes its time; draws the page anew when there is, or when the clock alone changes it.
 */
export function BenchSync({ version, changesAt }: BenchSyncProps) {
  const router = useRouter();

  useEffect(() => {
    let isGone = false;
    const ask = async () => {
      if (document.visibilityState === 'hidden') return;
      const askedAtMs = Date.now();
      const answer = await askVersion();
      if (answer === null || isGone) return;
      noteServerTime(answer.nowAt, askedAtMs, Date.now());
      const isDue = changesAt !== null && answer.nowAt >= changesAt;
      if (answer.version !== version || isDue) router.refresh();
    };
    void ask();
    const timer = setInterval(() => void ask(), ASK_EVERY_MS);
    const wake = () => void ask();
    document.addEventListener('visibilitychange', wake);
    window.addEventListener('pageshow', wake);
    window.addEventListener('online', wake);
    return () => {
      isGone = true;
      clearInterval(timer);
      document.removeEventListener('visibilitychange', wake);
      window.removeEventListener('pageshow', wake);
      window.removeEventListener('online', wake);
    };
  }, [version, changesAt, router]);

  useEffect(() => {
    if (changesAt === null) return;
    const waitMs = Math.min(Math.max(changesAt - serverTime(), 0) + 500, MAX_TIMER_MS);
    const timer = setTimeout(() => router.refresh(), waitMs);
    return () => clearTimeout(timer);
  }, [changesAt, router]);

  return null;
}

async function askVersion(): Promise<{ readonly nowAt: Instant; readonly version: string } | null> {
  try {
    const response = await fetch('/api/v1/bench/version', { cache: 'no-store' });
    const body: unknown = await response.json();
    if (typeof body !== 'object' || body === null || !('nowAt' in body) || !('version' in body)) return null;
    const { nowAt, version } = body;
    return typeof nowAt === 'number' && typeof version === 'string' ? { nowAt, version } : null;
  } catch {
    return null;
  }
}
