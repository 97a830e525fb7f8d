import { EXCLUSION_REASONS, exclusionText } from '@/lib/pulltest/exclusion';
import { modeText, PULL_MODES } from '@/lib/pulltest/pull-mode';
import { forceText } from '@/lib/units/format-quantity';
import type { PullChange, PullSeries } from '@/prisma/data/pull-series';
import type { ShopSettings } from '@/prisma/data/shop';

/** An entry of a series' history as one sentence, with what stood there before. */
export function changeText(
  { kind, pullId, before, after }: PullChange,
  series: PullSeries,
  shop: ShopSettings,
): string {
  const pull = series.pulls.find(({ id }) => id === pullId);
  const code = series.specimens.find(({ id }) => id === pull?.specimenId)?.code ?? 'a specimen';
  const reading = (of: unknown) => readingText(of, shop);
  switch (kind) {
    case 'series-made':
      return 'Series planned.';
    case 'mix-changed':
      return `Hours of mix ${text(after, 'mix')} written down${text(before, 'mixedAt') === '' ? '' : ' anew'}.`;
    case 'pull-recorded':
      return `${code} pulled: ${reading(after)}.`;
    case 'pull-corrected':
      return `${code} corrected to ${reading(after)}; it said ${reading(before)}. Why: ${text(after, 'reason')}.`;
    case 'pull-excluded': {
      const reason = EXCLUSION_REASONS.find((known) => known === text(after, 'reason'));
      const note = text(after, 'note');
      return `${code} left out: ${reason === undefined ? '' : exclusionText(reason)}${note === '' ? '' : ` (${note})`}.`;
    }
    case 'pull-counted-again':
      return `${code} counts again.`;
    case 'photo-kept':
      return `Photo of ${code} kept.`;
    case 'imported':
      return `${text(after, 'pulls')} pulls taken in from ${text(after, 'fileName')}.`;
    case 'calibration-accepted':
      return `Accepted as calibration ${text(after, 'version')}.`;
    case 'closed':
      return 'Series closed.';
    case 'reopened':
      return 'Series opened again.';
  }
}

function field(of: unknown, name: string): unknown {
  return typeof of === 'object' && of !== null ? Reflect.get(of, name) : undefined;
}

function text(of: unknown, name: string): string {
  const value = field(of, name);
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}

/** A reading as it was stored (`loadN`) or typed (`load`, already in N). */
function readingText(of: unknown, { forceUnit }: ShopSettings): string {
  const load = field(of, 'loadN') ?? field(of, 'load');
  const mode = PULL_MODES.find((known) => known === field(of, 'mode'));
  const words = mode === undefined ? '' : modeText(mode).toLowerCase();
  const bound = field(of, 'isLowerBound') === true ? 'at least ' : '';
  return typeof load === 'number' ? `${bound}${forceText(load, forceUnit)}, ${words}` : `no load, ${words}`;
}
