import { modeText, PULL_MODES } from '@/lib/pulltest/pull-mode';
import { lengthText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import type { PullSeries } from '@/prisma/data/pull-series';

/** The specimens in the order of pulling with empty boxes, to be filled in with a pencil. */
export function CardTable({ series, units }: { readonly series: PullSeries; readonly units: UnitChoice }) {
  const names = new Map(series.mixes.map(({ id, name }) => [id, name]));
  const hasConditions = series.plan.conditions.length > 1;
  const heads = ['No.', 'Specimen', 'Mix', 'Depth', ...(hasConditions ? ['Of'] : [])];
  const boxes = [`Load (${units.forceUnit})`, 'At least', 'How it ended', 'Time', 'Note'];
  return (
    <section className="grid gap-2">
      <h2 className="text-lg font-bold">In this order</h2>
      <ol className="flex flex-wrap gap-x-4">
        {PULL_MODES.map((mode, index) => (
          <li key={mode}>
            <strong>{index + 1}</strong> {modeText(mode)}
          </li>
        ))}
      </ol>
      <p>
        Scale: ____________________ Shows at most: __________ Last checked: __________ Pulled by: ____________________
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached without a mouse */}
      <section aria-label="Card to fill in" tabIndex={0} className="overflow-x-auto print:overflow-visible">
        <table className="w-full min-w-[40rem] border-collapse">
          <thead>
            <tr>
              {[...heads, ...boxes].map((title) => (
                <th key={title} scope="col" className="border border-ink px-2 py-1 text-left">
                  {title}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {series.specimens.map(({ id, pullOrder, code, mixId, depthMm, condition }) => (
              <tr key={id} className="break-inside-avoid">
                <td className="border border-ink px-2 py-2">{pullOrder}</td>
                <th scope="row" className="border border-ink px-2 py-2 text-left text-base">
                  {code}
                </th>
                <td className="border border-ink px-2 py-2">{names.get(mixId) ?? ''}</td>
                <td className="border border-ink px-2 py-2">{lengthText(depthMm, units.lengthUnit)}</td>
                {hasConditions && <td className="border border-ink px-2 py-2">{condition}</td>}
                {boxes.map((box) => (
                  <td key={box} className="min-w-16 border border-ink px-2 py-2" />
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}
