import type { ReactNode } from 'react';

export interface EstimateProps {
  readonly about: ReactNode;
  readonly earliest: ReactNode;
  readonly latest: ReactNode;
}

/** A computed value that looks like one: "about 19:40, between 18:55 and 20:30". */
export function Estimate({ about, earliest, latest }: EstimateProps) {
  return (
    <span>
      about <strong>{about}</strong>
      <span className="text-ink-soft">
        , between {earliest} and {latest}
      </span>
    </span>
  );
}
