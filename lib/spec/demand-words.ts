import type { DemandCaseName } from '@/lib/strength/demand';

/** What loads an anchor, as the subject of "... asks". */
export const DEMAND_WORDS: Readonly<Record<DemandCaseName, string>> = {
  fight: 'a fish running against the drag',
  snag: 'breaking the line off a snag',
  lift: 'swinging the fish out',
};
