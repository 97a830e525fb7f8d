import { whenText } from '@/lib/units/format-instant';
import type { Instant } from '@/lib/units/instant';
import type { PullChange, PullSeries } from '@/prisma/data/pull-series';
import type { ShopSettings } from '@/prisma/data/shop';
import { changeText } from './change-text';

export interface ChangeListProps {
  readonly changes: readonly PullChange[];
  readonly series: PullSeries;
  readonly shop: ShopSettings;
  readonly nowAt: Instant;
  readonly nameOf: (personId: string | null) => string | null;
}

/** The newest entries of a series' history. */
export function ChangeList({ changes, series, shop, nowAt, nameOf }: ChangeListProps) {
  return (
    <ul className="grid gap-2">
      {changes.map((change) => (
        <li key={change.number} className="grid gap-x-4 border-b border-line pb-2 sm:grid-cols-[12rem_1fr]">
          <span className="text-sm text-ink-soft">
            {whenText(change.at, nowAt, shop.timeZone)}
            {nameOf(change.personId) === null ? '' : `, ${nameOf(change.personId)}`}
          </span>
          <span>{changeText(change, series, shop)}</span>
        </li>
      ))}
    </ul>
  );
}
