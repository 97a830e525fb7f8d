import type { FormAction } from '@/app/_ui/form-state';
import { StatusMark } from '@/app/_ui/status-mark';
import type { CutBar } from '@/lib/bom/cut-list';
import { cutItem, staysInLot } from '@/lib/prepare/cut-taken';
import type { WireCut } from '@/lib/prepare/preparation';
import { lengthText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { StoredPreparation } from '@/prisma/data/preparations';
import { TickButton } from './tick-button';

export interface CutBarsProps {
  readonly cut: WireCut;
  readonly stored: StoredPreparation;
  readonly units: UnitChoice;
  readonly anchorName: (anchorId: string) => string;
  readonly lotCode: (lotId: string) => string;
  readonly action: FormAction | null;
}

/** A drawing wider than this many pieces is told in words alone. Chosen. */
const MOST_DRAWN = 150;

/** How each length of one wire is cut, drawn to scale. */
export function CutBars({ cut, stored, units, anchorName, lotCode, action }: CutBarsProps) {
  const { lengthUnit } = units;
  const wires = cut.wires.map(
    ({ anchorId, cutMm, count }) =>
      `${count} × ${lengthText(cutMm, lengthUnit)} (${cutMm} mm) for ${anchorName(anchorId)}`,
  );
  return (
    <div className="grid gap-4">
      <p>{wires.join('; ')}.</p>
      {cut.obstacle === 'too-long' && (
        <p className="border-l-4 border-accent bg-accent-soft px-4 py-3">
          No length in stock is long enough for these wires. Receive a lot in Stock, kept by length, or by weight where
          diameter and alloy of the wire are entered, and prepare anew.
        </p>
      )}
      {cut.obstacle === 'not-enough' && (
        <p className="border-l-4 border-accent bg-accent-soft px-4 py-3">
          Short of wire{cut.missingMm > 0 ? `: at least ${lengthText(cut.missingMm, lengthUnit)} more is needed` : ''}.
          Receive a lot in Stock, kept by length, or by weight where diameter and alloy of the wire are entered, and
          prepare anew.
        </p>
      )}
      <ol className="grid gap-3">
        {cut.bars.map((bar, index) => {
          const item = cutItem(cut.materialId, index + 1);
          const tick = stored.ticks.get(item);
          const name = bar.stockId === null ? 'to buy' : `lot ${lotCode(bar.stockId)}`;
          return (
            // biome-ignore lint/suspicious/noArrayIndexKey: lengths of one plan never change their order
            <li key={index} className="grid gap-1 break-inside-avoid">
              <p className="text-sm">
                <strong>
                  {index + 1}. {lengthText(bar.lengthMm, lengthUnit)}
                </strong>{' '}
                of {name}: {barText(bar, anchorName)}. Left {lengthText(bar.offcutMm, lengthUnit)}
                {leftWords(bar, stored.body.choices.rodMm)}.
              </p>
              {bar.pieces.length <= MOST_DRAWN && <BarDrawing bar={bar} />}
              {tick !== undefined && <StatusMark status="done">Cut</StatusMark>}
              {action !== null && (
                <TickButton
                  action={action}
                  preparationId={stored.id}
                  item={item}
                  label={`Cut: length ${index + 1}`}
                  word="Cut"
                  isDone={tick !== undefined}
                />
              )}
            </li>
          );
        })}
      </ol>
      {cut.bars.length > 0 && (
        <p className="text-sm text-ink-soft">
          {action === null ? '' : 'Cut takes the length from its lot in Stock; taken back, it is given back. '}
          {cut.isProven
            ? 'No other plan takes less length into use: proven.'
            : `The search for a better plan was not finished: none takes less than ${lengthText(cut.leastMm, lengthUnit)}.`}
        </p>
      )}
    </div>
  );
}

/** What becomes of what is left of a length. */
function leftWords(bar: CutBar, rodMm: number | null): string {
  if (!bar.isKept) return '';
  return staysInLot(bar, rodMm) ? ', keep it: it stays in the lot' : ', keep it: add it in Stock as a lot of its own';
}

function barText(bar: CutBar, anchorName: (anchorId: string) => string): string {
  const counts = new Map<string, number>();
  for (const { id } of bar.pieces) counts.set(id, (counts.get(id) ?? 0) + 1);
  return [...counts].map(([id, count]) => `${count} × ${anchorName(id)}`).join(', ');
}

/** Pieces as boxes in the length they are cut from; what is left over stays empty. */
function BarDrawing({ bar }: { readonly bar: CutBar }) {
  let x = bar.trimMm;
  const kerfMm = bar.pieces.length === 0 ? 0 : bar.kerfMm / bar.pieces.length;
  const boxes = bar.pieces.map((piece) => {
    const from = x;
    x += piece.lengthMm + kerfMm;
    return { from, lengthMm: piece.lengthMm };
  });
  return (
    <svg viewBox={`0 0 ${bar.lengthMm} 20`} preserveAspectRatio="none" aria-hidden="true" className="h-6 w-full">
      <rect
        width={bar.lengthMm}
        height="20"
        className="fill-well stroke-line-strong"
        vectorEffect="non-scaling-stroke"
      />
      {boxes.map(({ from, lengthMm }) => (
        <rect
          key={from}
          x={from}
          width={lengthMm}
          height="20"
          className="fill-chart-fill stroke-ink"
          vectorEffect="non-scaling-stroke"
        />
      ))}
    </svg>
  );
}
