import { MINUTE_MS } from '@/lib/units/instant';
import { readQuantity } from '@/lib/units/read-quantity';
import type { LocalClock } from './local-clock';
import type { PullColumn } from './pull-columns';
import type { PullLayout } from './pull-layout';
import { readPullMode } from './pull-mode-words';
import type { PullRow, PullRowRefusal } from './pull-row';
import { readStamp } from './stamp';
import { StampParts } from './stamp-parts';
import { type DayOrder, wallTime } from './wall-time';

/** What must be known to read the rows; units as spelled. */
export interface PullRowRules {
  readonly layout: PullLayout;
  readonly loadUnit: string;
  readonly depthUnit: string;
  readonly dayOrder: DayOrder;
  readonly clock: LocalClock;
}

export type PullRowRead =
  | { readonly ok: true; readonly row: PullRow }
  | { readonly ok: false; readonly reason: PullRowRefusal };

/** Reads the fields of one row. Nothing is guessed: a cell that cannot be read refuses the row. */
export function readPullRow(fields: readonly string[], line: number, rules: PullRowRules): PullRowRead {
  const refuse = (reason: PullRowRefusal): PullRowRead => ({ ok: false, reason });
  const cell = (column: PullColumn) => (fields[rules.layout.columns.get(column) ?? -1] ?? '').trim();
  const orNull = (text: string) => (text === '' ? null : plainText(text));
  if (fields.slice(rules.layout.headings.length).some((field) => field.trim() !== '')) return refuse('too-many-fields');
  const [specimen, mix] = [orNull(cell('specimen')), orNull(cell('mix'))];
  const depth = readDepth(cell('depth'), rules.depthUnit);
  if (depth === undefined) return refuse('bad-depth');
  if (specimen === null && (mix === null || depth === null)) return refuse('no-specimen');
  const load = readLoad(cell('load'), rules.loadUnit);
  if (load === undefined) return refuse('bad-load');
  const modeText = cell('mode');
  const mode = readPullMode(modeText);
  if (modeText !== '' && mode === null) return refuse('bad-mode');
  const angleDeg = readAngle(cell('angle'));
  if (angleDeg === undefined) return refuse('bad-angle');
  const pulledAt = readTime(cell('stamp') || `${cell('date')} ${cell('clock')}`.trim(), rules);
  if (pulledAt === undefined) return refuse('bad-time');
  const row: PullRow = {
    line,
    specimen,
    mix,
    condition: orNull(cell('condition')),
    embedmentMm: depth,
    loadN: load?.loadN ?? null,
    isLowerBound: (load?.isLowerBound ?? false) || isYes(cell('at-least')),
    mode,
    angleDeg,
    pulledAt,
    note: plainText(cell('note')),
  };
  return { ok: true, row };
}

/** The text without the apostrophe that keeps a spreadsheet from taking it for a formula. */
function plainText(text: string): string {
  return text.replace(/^'(?='*[=+\-@])/, '');
}

/** `62`, `62.5 lbf`, `> 150`, `150+`, `at least 150`; null for an empty cell, undefined for anything else. */
export function readLoad(text: string, unit: string): { loadN: number; isLowerBound: boolean } | null | undefined {
  if (text === '' || text === '-') return null;
  const bound = /^(?:>=?|≥|at least|min\.?|mind\.?)\s*/i.exec(text)?.[0] ?? '';
  const rest = text.slice(bound.length);
  const isOpen = /\+$/.test(rest);
  const load = readQuantity('force', isOpen ? rest.slice(0, -1) : rest, unit);
  return load.ok ? { loadN: load.value, isLowerBound: bound !== '' || isOpen } : undefined;
}

function readDepth(text: string, unit: string): number | null | undefined {
  if (text === '') return null;
  const depth = readQuantity('length', text, unit);
  return depth.ok && depth.value > 0 ? depth.value : undefined;
}

function readAngle(text: string): number | null | undefined {
  if (text === '') return null;
  const angle = Number(text.replace(/\s*(°|deg)\s*$/i, '').replace(',', '.'));
  return angle >= 0 && angle <= 90 ? angle : undefined;
}

function isYes(text: string): boolean {
  return /^(y|yes|true|1|x|ja|at least|>=?|≥)$/i.test(text.trim());
}

/** Null for an empty cell, undefined for what is no time; an hour the clock shows twice is taken as its first pass. */
function readTime(text: string, { dayOrder, clock }: PullRowRules): number | null | undefined {
  if (text === '') return null;
  const parts = new StampParts();
  if (!readStamp(text, 0, text.length, parts)) return undefined;
  const wallMs = wallTime(parts, dayOrder);
  if (Number.isNaN(wallMs)) return undefined;
  const offsetMs = Number.isNaN(parts.offsetMinutes) ? clock.meaning(wallMs).offsetMs : parts.offsetMinutes * MINUTE_MS;
  return wallMs - offsetMs;
}
