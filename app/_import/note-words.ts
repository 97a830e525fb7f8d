import type { ReadingFileReport } from '@/lib/exchange/reading-file-result';
import type { Stretch } from '@/lib/exchange/series-notes';
import { durationText } from '@/lib/units/format-duration';
import { dateClockText } from '@/lib/units/format-instant';
import { temperatureText } from '@/lib/units/format-quantity';
import type { Instant } from '@/lib/units/instant';
import type { ShopSettings } from '@/prisma/data/shop';
import { numberWords } from './understood-words';

/** Stretches named one by one. Chosen. */
const NAMED_STRETCHES = 3;

/** What a maker should know of a log before taking it in, most telling first. */
export function noteWords(report: ReadingFileReport, shop: ShopSettings, nowAt: Instant): string[] {
  const { notes, clock } = report;
  if (notes === null) return [];
  const when = (at: Instant) => dateClockText(at, shop.timeZone);
  const span = `From ${when(notes.firstAt)} to ${when(notes.lastAt)}, ${temperatureText(notes.lowestC, shop.temperatureUnit)} to ${temperatureText(notes.highestC, shop.temperatureUnit)}`;
  const said = [notes.medianStepMs > 0 ? `${span}, mostly every ${stepText(notes.medianStepMs)}.` : `${span}.`];
  if (notes.lastAt > nowAt)
    said.push('Some readings lie in the future: look at the zone, the dates and the logger’s clock.');
  if (notes.gapCount > 0)
    said.push(`${counted(notes.gapCount, 'gap')}: ${stretchesText(notes.gaps, notes.gapCount, when)}.`);
  if (notes.flatCount > 0) {
    said.push(
      `No change at all for more than 6 hours, as from a sensor that died: ${stretchesText(notes.flats, notes.flatCount, when)}.`,
    );
  }
  if (clock.skippedRows > 0) {
    said.push(`${counted(clock.skippedRows, 'row')} in the hour that the clock skips, counted on from before it.`);
  }
  if (clock.repeatedRows > 0) {
    said.push(
      `${counted(clock.repeatedRows, 'row')} in the hour that the clock shows twice, ${clock.secondPassRows} of them in its second pass.`,
    );
  }
  if (report.isBackwards) said.push('The file runs from the newest reading to the oldest.');
  if (report.outOfOrderRows > 0) said.push(`${counted(report.outOfOrderRows, 'row')} out of order, put in place.`);
  if (report.isEpochMixed) said.push('Unix times in seconds and in milliseconds stand in one file; both were read.');
  if (report.badHumidityRows > 0) {
    said.push(
      `${counted(report.badHumidityRows, 'row')} with a humidity that is no number from 0 to 100: only the temperature is taken.`,
    );
  }
  return said;
}

function stretchesText(stretches: readonly Stretch[], count: number, when: (at: Instant) => string): string {
  const named = stretches.slice(0, NAMED_STRETCHES).map(({ fromAt, toAt }) => `${when(fromAt)} to ${when(toAt)}`);
  const more = count - named.length;
  return more > 0 ? `${named.join('; ')}; and ${numberWords(more)} more` : named.join('; ');
}

function counted(count: number, thing: string): string {
  return `${numberWords(count)} ${thing}${count === 1 ? '' : 's'}`;
}

function stepText(stepMs: number): string {
  return stepMs < 60_000 ? `${stepMs / 1000} s` : durationText(stepMs);
}
