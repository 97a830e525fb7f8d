import type { OutReason, PullMark } from '@/lib/pulltest/judge-pulls';
import type { Quantity, Words } from '@/lib/units/quantity';

/** Names that sentences about a series are made with. */
export interface PullWords {
  /** A mix as the shop knows it: `mix 2 of batch 12`. */
  mix(mixId: string): string;
  /** A pull by its specimen: `B-3`. */
  pull(pullId: string): string;
  /** The pieces a mix went into, `pieces 9-16 of batch 12`; null for a mix of specimens only. */
  pieces(mixId: string): string | null;
}

/** One sentence with its weight: the answer, what limits it, what to look into, or what to keep in mind. */
export interface Sentence {
  readonly kind: 'answer' | 'limit' | 'question' | 'note';
  readonly words: Words;
}

export const force = (valueN: number): Quantity => ({ value: valueN, unit: 'N' });
export const length = (valueMm: number): Quantity => ({ value: valueMm, unit: 'mm' });

/** A share as whole percent: 0.183 is `18 %`. */
export function percentText(share: number): string {
  return `${Math.round(Math.abs(share) * 100)} %`;
}

/** `p = .03`, `p < .001`: the chance of seeing as much by accident. */
export function pText(p: number): string {
  if (p < 0.001) return 'p < .001';
  return `p = ${p < 0.1 ? p.toFixed(p < 0.01 ? 3 : 2).replace(/^0/, '') : p.toFixed(1).replace(/^0/, '')}`;
}

/** `18 % low`, `5 % high`. */
export function offText(difference: number): string {
  return `${percentText(difference)} ${difference < 0 ? 'low' : 'high'}`;
}

/** ` (+15 %)`, ` (about the same)`: a change as an aside. */
export function changeText(change: number): string {
  if (Math.abs(change) < 0.005) return ' (about the same)';
  return ` (${change < 0 ? '\u2212' : '+'}${percentText(change)})`;
}

/** `1 pull`, `3 pulls`. */
export function pullsText(count: number): string {
  return count === 1 ? '1 pull' : `${count} pulls`;
}

/** Why a pull is not among the readings. */
export function outReasonText(reason: OutReason): string {
  switch (reason) {
    case 'excluded':
      return 'left out for a physical reason';
    case 'early':
      return 'pulled before it was sure to be cured';
    case 'at-angle':
      return 'pulled at an angle';
    case 'pulled-before':
      return 'broken or damaged by an earlier pull';
    case 'pulled-again':
      return 'pulled again later, and counted then';
    case 'no-load':
      return 'no load written down';
    case 'scale-failed':
      return 'the scale failed';
    case 'implausible':
      return 'a load or depth that cannot be: check the figures';
  }
}

/** What to keep in mind about a pull. */
export function markText(mark: PullMark): string {
  switch (mark) {
    case 'release-not-known':
      return 'not known whether it had cured';
    case 'topped-out':
      return 'the scale topped out: at least this';
    case 'scale-not-named':
      return 'scale not named';
    case 'scale-not-checked':
      return 'scale not checked within half a year';
    case 'fell-out':
      return 'came out by hand';
  }
}
