import type { ResourceKind } from '@/lib/contracts/resource-forms';

/** Kinds of places, in words. */
export const PLACE_WORDS: { readonly [K in ResourceKind]: string } = {
  rotator: 'rotator',
  rack: 'drying rack',
  clamps: 'clamps or jigs',
  booth: 'spray booth',
  other: 'something else',
};
