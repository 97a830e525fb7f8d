import type { ReactNode } from 'react';
import type { PullMode } from '@/lib/pulltest/pull-mode';

/** Signs for the mixes of a plot, told apart by their shape; further ones are named by their letter. Our own. */
const OUTLINES: readonly string[] = [
  'M-6 0A6 6 0 1 0 6 0A6 6 0 1 0 -6 0Z',
  'M-5.5 -5.5H5.5V5.5H-5.5Z',
  'M0 -7L7 5.5H-7Z',
  'M0 -7.5L7.5 0L0 7.5L-7.5 0Z',
  'M0 7L7 -5.5H-7Z',
  'M-2.2 -7H2.2V-2.2H7V2.2H2.2V7H-2.2V2.2H-7V-2.2H-2.2Z',
];

/** What gave way, as the plot tells it: in the bond, in the wood, or outside the joint. */
export type FailurePlace = 'bond' | 'wood' | 'elsewhere';

export function failurePlace(mode: PullMode): FailurePlace {
  switch (mode) {
    case 'slid-out':
    case 'wood-sleeve':
      return 'bond';
    case 'split':
    case 'tore-out':
      return 'wood';
    case 'wire-broke':
    case 'eye-opened':
    case 'jig-failed':
    case 'scale-failed':
    case 'held':
      return 'elsewhere';
  }
}

export interface PullSignProps {
  /** Position of the mix in the series. */
  readonly mix: number;
  readonly mixName: string;
  readonly place: FailurePlace;
  readonly isOut?: boolean;
}

/** A reading: its shape is the mix, its filling what gave way; crossed out where it does not count. */
export function PullSign({ mix, mixName, place, isOut = false }: PullSignProps) {
  const outline = OUTLINES[mix];
  const look = LOOKS[place];
  return (
    <g strokeWidth={1.8}>
      {outline === undefined ? (
        <>
          <circle r={8} className={look} />
          <text
            textAnchor="middle"
            dy="0.35em"
            className={`stroke-none text-xs font-bold ${place === 'bond' ? 'fill-sheet' : 'fill-ink'}`}
          >
            {mixName.slice(0, 2)}
          </text>
        </>
      ) : (
        <path d={outline} className={look} />
      )}
      {isOut && <path d="M-9 -9L9 9M-9 9L9 -9" className="stroke-accent" strokeWidth={2} />}
    </g>
  );
}

const LOOKS: { readonly [P in FailurePlace]: string } = {
  bond: 'fill-chart-a stroke-chart-a',
  wood: 'fill-sheet stroke-chart-a',
  elsewhere: 'fill-sheet stroke-chart-a [stroke-dasharray:2_2]',
};

/** A sign on its own, for a legend or a table. */
export function LegendSign({ children }: { readonly children: ReactNode }) {
  return (
    <svg viewBox="-10 -10 20 20" aria-hidden="true" className="size-5 shrink-0">
      {children}
    </svg>
  );
}
