import { figureSourceText } from '@/app/stock/_components/words';
import type { DepthPlot } from '@/lib/strength/depth-plot';
import { forceText, lengthText } from '@/lib/units/format-quantity';
import type { UnitChoice } from '@/lib/units/unit-choice';
import { valueAt } from './depth-plot-view';

export interface PublishedListProps {
  readonly plot: DepthPlot;
  readonly embedmentMm: number | null;
  readonly units: UnitChoice;
}

/** The numbered curves by name, with what each gives at the depth of now, its formula and its range. */
export function PublishedList({ plot, embedmentMm, units }: PublishedListProps) {
  return (
    <details>
      <summary className="inline-flex min-h-touch items-center font-semibold underline decoration-line-strong underline-offset-4">
        The {plot.published.length} numbered formulas
      </summary>
      <p className="text-sm text-ink-soft">
        None was made for wire this thin: they are here to see that several independent ones bracket the estimate.
        {embedmentMm !== null && ` Loads at ${lengthText(embedmentMm, units.lengthUnit)}.`}
      </p>
      <ol className="mt-2 grid gap-2 text-sm">
        {plot.published.map(({ id, title, basis, formula, source, range, points }, index) => {
          const loadN = embedmentMm === null ? null : valueAt([points], embedmentMm);
          return (
            <li key={id} className="grid grid-cols-[1.75rem_1fr] gap-x-2 border-b border-line pb-2">
              <span className="font-semibold">{index + 1}</span>
              <span>
                <span className="flex flex-wrap justify-between gap-x-3">
                  <strong>{title}</strong>
                  <span>
                    {loadN === null ? '' : `${forceText(loadN, units.forceUnit)} `}
                    {basis}
                  </span>
                </span>
                <span className="block text-ink-soft">
                  <code>{formula}</code>
                  <br />
                  For {range}. {figureSourceText(source)}
                </span>
              </span>
            </li>
          );
        })}
      </ol>
    </details>
  );
}
