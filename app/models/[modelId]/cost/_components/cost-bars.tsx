import { moneyText } from '@/lib/units/money';

export interface CostBar {
  readonly id: string;
  readonly name: string;
  readonly detail: string;
  /** Null: not known; it has no bar. */
  readonly minor: number | null;
  /** Work at the bench is drawn hollow, material filled. */
  readonly isWork: boolean;
}

export interface CostBarsProps {
  readonly bars: readonly CostBar[];
  readonly totalMinor: number;
  readonly currency: string;
}

/** What makes up a cost, the dearest first: a bar as long as its share of the whole, with the figure beside it. */
export function CostBars({ bars, totalMinor, currency }: CostBarsProps) {
  const most = Math.max(1, ...bars.map((bar) => bar.minor ?? 0));
  return (
    <ul className="grid gap-3">
      {bars.map(({ id, name, detail, minor, isWork }) => (
        <li key={id} className="grid gap-1">
          <div className="flex flex-wrap items-baseline justify-between gap-x-4">
            <span className="font-semibold">
              {name} <span className="font-normal text-ink-soft">{detail}</span>
            </span>
            <span className="tabular-nums">
              {minor === null
                ? 'not known'
                : `${moneyText(minor, currency)}, ${totalMinor === 0 ? 0 : Math.round((100 * minor) / totalMinor)} %`}
            </span>
          </div>
          <svg viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true" className="h-3 w-full">
            <rect x="0" y="0" width="100" height="4" className="fill-well" />
            {minor !== null && minor > 0 && (
              <rect
                x="0.2"
                y="0.4"
                width={Math.max(0.6, (99.6 * minor) / most)}
                height="3.2"
                className={isWork ? 'fill-sheet stroke-ink stroke-[0.8]' : 'fill-ink'}
                vectorEffect="non-scaling-stroke"
              />
            )}
          </svg>
        </li>
      ))}
    </ul>
  );
}
