import { type Column, Table } from '@/app/_ui/table';
import type { DepthSummary } from '@/lib/pulltest/depth-summary';
import { lowerN } from '@/lib/pulltest/lower-model';
import type { MixEffect } from '@/lib/pulltest/mix-effects';
import type { PullAnalysis } from '@/lib/pulltest/pull-analysis';
import { modeText, type PullMode } from '@/lib/pulltest/pull-mode';
import { offText, outReasonText, type PullWords, pText } from '@/lib/pulltest/pull-words';
import { forceText, lengthText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';

interface PartProps {
  readonly analysis: PullAnalysis;
  readonly units: UnitChoice;
}

/** Depth by depth: what was read, the middle, the worst and the lower value. */
export function DepthTable({ analysis: { answer }, units }: PartProps) {
  const load = (valueN: number | null) => (valueN === null ? '–' : forceText(valueN, units.forceUnit));
  const { lower } = answer;
  const columns: readonly Column<DepthSummary>[] = [
    { id: 'depth', title: 'Depth', cell: ({ depthMm }) => lengthText(depthMm, units.lengthUnit) },
    { id: 'exact', title: 'Failed in the joint', isNumber: true, cell: ({ exactPulls }) => exactPulls },
    { id: 'bound', title: 'At least', isNumber: true, cell: ({ boundPulls }) => boundPulls },
    { id: 'middle', title: 'Middle', isNumber: true, cell: ({ middleN }) => load(middleN) },
    { id: 'worst', title: 'Worst read', isNumber: true, cell: ({ leastN }) => load(leastN) },
    {
      id: 'lower',
      title: 'Lower value',
      isNumber: true,
      cell: ({ depthMm }) => load(lower.ok ? lowerN(lower.model, depthMm) : null),
    },
  ];
  return (
    <Table
      caption="Depth by depth"
      columns={columns}
      rows={answer.depths.depths}
      rowKey={({ depthMm }) => String(depthMm)}
    />
  );
}

/** Every mix against the others at the same depths, with the test of the most deviant. */
export function MixEffectTable({
  analysis: { answer },
  words,
}: Omit<PartProps, 'units'> & { readonly words: PullWords }) {
  const { mixes } = answer;
  if (mixes === null) {
    return <p className="text-ink-soft">From one mix, or from depths that share none, nothing can be said of mixes.</p>;
  }
  const columns: readonly Column<MixEffect>[] = [
    { id: 'mix', title: 'Mix', cell: ({ mixId }) => words.mix(mixId) },
    { id: 'pulls', title: 'Pulls', isNumber: true, cell: ({ pulls }) => pulls },
    { id: 'reads', title: 'Reads', isNumber: true, cell: ({ difference }) => offText(difference) },
    {
      id: 'p',
      title: 'By chance alone',
      isNumber: true,
      cell: ({ p }) => (p === null ? 'cannot be told' : pText(p)),
    },
    { id: 'pieces', title: 'Joined with it', isLong: true, cell: ({ mixId }) => words.pieces(mixId) ?? '–' },
  ];
  const { permutation, hasBounds } = mixes;
  const effects = mixes.effects.toSorted((a, b) =>
    words.mix(a.mixId).localeCompare(words.mix(b.mixId), 'en', { numeric: true }),
  );
  return (
    <div className="grid gap-2">
      <Table caption="Mixes" columns={columns} rows={effects} rowKey={({ mixId }) => mixId} />
      {permutation !== null && (
        <p className="text-sm text-ink-soft">
          Rearranging the readings of each depth among the mixes, without assuming how loads scatter:{' '}
          {pText(permutation.p)} that the most deviant mix lies so far out.
          {hasBounds ? ' Readings of "at least" stand in as what they are expected to be.' : ''}
        </p>
      )}
    </div>
  );
}

/** How the pulls ended, and what does not count. */
export function TallyTable({ analysis: { tally } }: Pick<PartProps, 'analysis'>) {
  const columns: readonly Column<{ readonly mode: PullMode; readonly pulls: number }>[] = [
    { id: 'mode', title: 'How it ended', cell: ({ mode }) => modeText(mode) },
    { id: 'pulls', title: 'Pulls', isNumber: true, cell: ({ pulls }) => pulls },
  ];
  return (
    <div className="grid gap-2">
      <Table caption="How the pulls ended" columns={columns} rows={tally.modes} rowKey={({ mode }) => mode} />
      {tally.out.length > 0 && (
        <ul className="list-disc pl-5 text-sm text-ink-soft">
          {tally.out.map(({ reason, pulls }) => (
            <li key={reason}>
              {pulls} not counted: {outReasonText(reason)}
            </li>
          ))}
        </ul>
      )}
    </div>
  );
}

/** The lower value with and without what was left out, and without what stands out. */
export function WithAndWithout({ analysis, units, words }: PartProps & { readonly words: PullWords }) {
  const { answer, withExcluded } = analysis;
  const rows: { readonly what: string; readonly lower: string }[] = [];
  const load = (of: { readonly lowerN: number } | null) =>
    of === null ? 'no lower value' : forceText(of.lowerN, units.forceUnit);
  rows.push({ what: 'As it counts', lower: load(answer.atDepth) });
  if (withExcluded !== null) rows.push({ what: 'With all that was left out', lower: load(withExcluded.atDepth) });
  for (const { without, result } of answer.sensitivity) {
    const what = `Without ${without.kind === 'pull' ? words.pull(without.id) : words.mix(without.id)}`;
    rows.push({ what, lower: load(result.ok ? result : null) });
  }
  const depth = answer.atDepth?.depthMm ?? withExcluded?.atDepth?.depthMm ?? null;
  const columns: readonly Column<(typeof rows)[number]>[] = [
    { id: 'what', title: 'Pulls', cell: ({ what }) => what },
    {
      id: 'lower',
      title: depth === null ? 'Lower value' : `Lower value at ${lengthText(depth, units.lengthUnit)}`,
      isNumber: true,
      cell: ({ lower }) => lower,
    },
  ];
  return <Table caption="With and without" columns={columns} rows={rows} rowKey={({ what }) => what} />;
}
