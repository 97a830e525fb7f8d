import type { JudgedPull } from '@/lib/pulltest/judge-pulls';
import { type FailurePlace, failurePlace, LegendSign, PullSign } from './pull-shapes';

export interface PlotLegendProps {
  readonly mixes: readonly { readonly id: string; readonly name: string }[];
  readonly pulls: readonly JudgedPull[];
  readonly hasCurve: boolean;
}

const PLACES: readonly { readonly place: FailurePlace; readonly words: string }[] = [
  { place: 'bond', words: 'full: the glue let go, or wood came with it' },
  { place: 'wood', words: 'hollow: the wood split or tore' },
  { place: 'elsewhere', words: 'dashed: wire, eye, jig, scale, or stopped' },
];

/** Most mixes that the legend names; further ones bear their name on the sign. */
const NAMED_MIXES = 6;

/** What the signs and lines of the plot mean: only those that occur. */
export function PlotLegend({ mixes, pulls, hasCurve }: PlotLegendProps) {
  const places = new Set(pulls.map(({ record }) => failurePlace(record.mode)));
  return (
    <figcaption className="flex flex-wrap gap-x-6 gap-y-1 text-sm">
      {mixes.slice(0, NAMED_MIXES).map(({ id, name }, index) => (
        <span key={id} className="inline-flex items-center gap-2">
          <LegendSign>
            <PullSign mix={index} mixName={name} place="bond" />
          </LegendSign>
          mix {name}
        </span>
      ))}
      {PLACES.filter(({ place }) => places.has(place)).map(({ place, words }) => (
        <span key={place} className="inline-flex items-center gap-2">
          <LegendSign>
            <PullSign mix={0} mixName="" place={place} />
          </LegendSign>
          {words}
        </span>
      ))}
      {pulls.some(({ use }) => use.kind === 'at-least') && (
        <span className="inline-flex items-center gap-2">
          <svg viewBox="-10 -24 20 24" aria-hidden="true" className="h-6 w-5 fill-none stroke-chart-a stroke-2">
            <path d="M0 -3V-20M-4 -15L0 -20L4 -15" />
          </svg>
          at least this
        </span>
      )}
      {pulls.some(({ use }) => use.kind === 'out') && <span>crossed: does not count</span>}
      {hasCurve && <span>shaded: where the middle itself lies, with 95 % confidence</span>}
    </figcaption>
  );
}
