import type { PullRow } from '@/lib/exchange/pull-row';
import { mixLetters } from '@/lib/pulltest/pull-design';
import type { PullMode } from '@/lib/pulltest/pull-mode';

/** What a series holds already, as far as rows of a file are matched with it. */
export interface IntakeSeries {
  readonly conditions: readonly string[];
  readonly mixes: readonly string[];
  readonly specimens: readonly {
    readonly code: string;
    readonly mix: string;
    readonly condition: string;
    readonly depthMm: number;
  }[];
  readonly pulls: readonly {
    readonly code: string;
    readonly loadN: number | null;
    readonly mode: PullMode;
    readonly pulledAt: number;
  }[];
}

/** Why a row that could be read is not taken in. */
export const INTAKE_REFUSALS = [
  'no-mode',
  'no-load',
  'no-condition',
  'not-as-planned',
  'no-depth',
  'in-future',
] as const;
export type IntakeRefusal = (typeof INTAKE_REFUSALS)[number];

/** The specimen a row is of: one of the series, or one the file adds. */
export interface IntakeSpecimen {
  readonly code: string;
  readonly mix: string;
  readonly condition: string;
  readonly depthMm: number;
  readonly isNew: boolean;
}

export type IntakeRow =
  | { readonly kind: 'new'; readonly row: PullRow & { readonly mode: PullMode }; readonly specimen: IntakeSpecimen }
  /** Written down before: taken in again it would count twice. */
  | { readonly kind: 'known'; readonly row: PullRow }
  /** A specimen without a reading. */
  | { readonly kind: 'empty'; readonly row: PullRow }
  | { readonly kind: 'refused'; readonly row: PullRow; readonly reason: IntakeRefusal };

/** Depths nearer than this are the same depth. */
const SAME_DEPTH_MM = 0.05;

/**
 * Matches the rows of a file with a series, in their order: by specimen, else by mix, depth and condition. A specimen
 * or a mix that the series does not have is added. A row that says the same as a pull of the series is known; so a file
 * may be taken in twice. `nowAt`: pulls to come are refused.
 */
export function pullIntake(series: IntakeSeries, rows: readonly PullRow[], nowAt: number): IntakeRow[] {
  const specimens: IntakeSpecimen[] = series.specimens.map((specimen) => ({ ...specimen, isNew: false }));
  const pulled = new Set(series.pulls.map(({ code }) => code));
  return rows.map((row): IntakeRow => {
    if (row.loadN === null && row.mode === null) return { kind: 'empty', row };
    const refused = (reason: IntakeRefusal): IntakeRow => ({ kind: 'refused', row, reason });
    const { mode } = row;
    if (mode === null) return refused('no-mode');
    if (row.loadN === null && mode !== 'scale-failed') return refused('no-load');
    if (row.pulledAt !== null && row.pulledAt > nowAt) return refused('in-future');
    const found = specimenOf(row, series, specimens, pulled);
    if (typeof found === 'string') return refused(found);
    if (isKnown(row, found.code, series)) return { kind: 'known', row };
    if (found.isNew && !specimens.includes(found)) specimens.push(found);
    pulled.add(found.code);
    return { kind: 'new', row: { ...row, mode }, specimen: found };
  });
}

function specimenOf(
  row: PullRow,
  series: IntakeSeries,
  specimens: readonly IntakeSpecimen[],
  pulled: ReadonlySet<string>,
): IntakeSpecimen | IntakeRefusal {
  const named = row.specimen === null ? undefined : specimens.find(({ code }) => isSame(code, row.specimen));
  if (named !== undefined) return agrees(row, named) ? named : 'not-as-planned';
  const condition = conditionOf(row, series);
  if (condition === null) return 'no-condition';
  const { embedmentMm: depthMm } = row;
  if (depthMm === null) return 'no-depth';
  const mix = series.mixes.find((name) => isSame(name, row.mix)) ?? row.mix ?? mixOfCode(row.specimen);
  if (row.specimen === null) {
    const fitting = specimens.filter(
      (one) => isSame(one.mix, mix) && one.condition === condition && isNear(one.depthMm, depthMm),
    );
    const free =
      fitting.find(({ code }) => !pulled.has(code)) ?? fitting.find(({ code }) => isKnown(row, code, series));
    if (free !== undefined) return free;
  }
  return { code: row.specimen ?? nextCode(mix, specimens), mix, condition, depthMm, isNew: true };
}

/** What the row says of a specimen of the series must not contradict it: one of the two is a slip of the pen. */
function agrees(row: PullRow, specimen: IntakeSpecimen): boolean {
  return (
    (row.mix === null || isSame(row.mix, specimen.mix)) &&
    (row.embedmentMm === null || isNear(row.embedmentMm, specimen.depthMm)) &&
    (row.condition === null || isSame(row.condition, specimen.condition))
  );
}

function conditionOf({ condition }: PullRow, { conditions }: IntakeSeries): string | null {
  if (condition === null) return conditions.length === 1 ? (conditions[0] ?? null) : null;
  return conditions.find((name) => isSame(name, condition)) ?? null;
}

/** `B-3` is of mix B; anything else is of a mix of its own name. */
function mixOfCode(code: string | null): string {
  return /^([A-Za-z]+)[- ]?\d+$/.exec(code ?? '')?.[1]?.toUpperCase() ?? code ?? mixLetters(0);
}

function nextCode(mix: string, specimens: readonly IntakeSpecimen[]): string {
  const taken = new Set(specimens.map(({ code }) => code));
  for (let number = 1; ; number++) if (!taken.has(`${mix}-${number}`)) return `${mix}-${number}`;
}

function isKnown(row: PullRow, code: string, { pulls }: IntakeSeries): boolean {
  return pulls.some(
    (pull) =>
      pull.code === code &&
      pull.mode === row.mode &&
      isNearLoad(pull.loadN, row.loadN) &&
      // A file of another program may have cut the seconds off.
      (row.pulledAt === null || Math.abs(row.pulledAt - pull.pulledAt) < 60_000),
  );
}

function isNearLoad(a: number | null, b: number | null): boolean {
  if (a === null || b === null) return a === b;
  return Math.abs(a - b) <= 1e-4 * Math.max(a, b);
}

function isNear(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME_DEPTH_MM;
}

function isSame(a: string, b: string | null): boolean {
  return b !== null && a.trim().toLowerCase() === b.trim().toLowerCase();
}

/** What a refused row lacks and what to do. */
export function intakeRefusalText(refusal: IntakeRefusal): string {
  switch (refusal) {
    case 'no-mode':
      return 'It does not say how the pull ended. Write it in the words of the card.';
    case 'no-load':
      return 'It has no load. Write the greatest load, or that the scale failed.';
    case 'no-condition':
      return 'It names none of the materials that this series compares.';
    case 'not-as-planned':
      return 'Mix, depth or material differ from what the series has for this specimen. One of the two is wrong.';
    case 'no-depth':
      return 'The series does not have this specimen, and the row gives no depth to add it with.';
    case 'in-future':
      return 'Its time is still to come.';
  }
}
